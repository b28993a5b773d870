using System.ComponentModel;
using Simfeel.Builds;
using Simfeel.Builds.Writing;
using Simfeel.CommandLine.Output;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Fit;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel fit swing</c>: a bifilar swing test into a moment of inertia.</summary>
internal sealed class FitSwingCommand : Command<FitSwingCommand.Settings>
{
    internal sealed class Settings : MeasuredSettings
    {
        [CommandOption("--axis <AXIS>")]
        [Description("Axis that hung vertically: roll, pitch or yaw. Required.")]
        public string Axis { get; init; } = "";

        [CommandOption("--mass-g <GRAMS>")]
        [Description("Mass of the craft as it swung, battery on, without the rig. Required.")]
        public double Mass { get; init; } = double.NaN;

        [CommandOption("--spacing-mm <MM>")]
        [Description("Distance between the two wires. Required.")]
        public double Spacing { get; init; } = double.NaN;

        [CommandOption("--length-mm <MM>")]
        [Description("Free length of the wires. Required.")]
        public double Length { get; init; } = double.NaN;

        [CommandOption("--period-s <SECONDS>")]
        [Description("Time of one full swing, there and back: time twenty and divide. Required.")]
        public double Period { get; init; } = double.NaN;

        [CommandOption("--mass-pm-g <GRAMS>")]
        [Description("Standard deviation of the mass. Default 1 g or 0.2 %, whichever is less.")]
        public double? MassSigma { get; init; }

        [CommandOption("--spacing-pm-mm <MM>")]
        [Description("Standard deviation of the spacing. Default 0.5 mm.")]
        public double SpacingSigma { get; init; } = 0.5;

        [CommandOption("--length-pm-mm <MM>")]
        [Description("Standard deviation of the length. Default 1 mm.")]
        public double LengthSigma { get; init; } = 1;

        [CommandOption("--period-pm-s <SECONDS>")]
        [Description("Standard deviation of the period. Default 0.5 % of it.")]
        public double? PeriodSigma { get; init; }

        [CommandOption("--swing-deg <DEGREES>")]
        [Description("Largest angle from rest, 0 to 60: a wide swing is slower, and that is taken off. Default 0.")]
        public double Swing { get; init; }

        [CommandOption("--rig-mass-g <GRAMS>")]
        [Description("Mass of a frame that swung along. Default 0.")]
        public double RigMass { get; init; }

        [CommandOption("--rig-inertia-g-m2 <VALUE>")]
        [Description("Inertia of that frame about the same axis. Default 0.")]
        public double RigInertia { get; init; }

        public override ValidationResult Validate()
        {
            if (Axis.Length == 0) return ValidationResult.Error("--axis is missing: roll, pitch or yaw.");
            if (Axis is not ("roll" or "pitch" or "yaw")) return ValidationResult.Error($"--axis is '{Axis}'; it must be roll, pitch or yaw.");
            (string Name, double Value, double Least, double Most, string Unit)[] ranges =
            [
                ("--mass-g", Mass, 5, 50000, "g"), ("--spacing-mm", Spacing, 10, 3000, "mm"), ("--length-mm", Length, 50, 20000, "mm"),
                ("--period-s", Period, 0.05, 60, "s"), ("--swing-deg", Swing, 0, 60, "degrees"), ("--rig-mass-g", RigMass, 0, 20000, "g"),
                ("--rig-inertia-g-m2", RigInertia, 0, 10000, "g m2"), ("--mass-pm-g", MassSigma ?? 0, 0, 1000, "g"),
                ("--spacing-pm-mm", SpacingSigma, 0, 100, "mm"), ("--length-pm-mm", LengthSigma, 0, 500, "mm"), ("--period-pm-s", PeriodSigma ?? 0, 0, 10, "s"),
            ];
            foreach ((string name, double value, double least, double most, string unit) in ranges)
            {
                if (double.IsNaN(value)) return ValidationResult.Error($"{name} is missing.");
                if (!(value >= least && value <= most)) return ValidationResult.Error($"{name} is {value}; it must lie between {least} and {most} {unit}.");
            }
            if (Spacing >= Length) return ValidationResult.Error($"--spacing-mm is {Spacing}; it must be less than the wires' length of {Length} mm.");
            return base.Validate();
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        string? path = settings.NoWrite ? null : MeasuredCopy.Place(settings.Build, settings.Out, settings.Force);
        AssembledBuild build = BuildLibrary.Load(settings.Build, settings.Air);
        double periodSigma = settings.PeriodSigma ?? 0.005 * settings.Period;
        SwingTest test = new()
        {
            Mass = Scaled(settings.Mass, settings.MassSigma ?? 1e3 * KitchenScale.Sigma(settings.Mass / 1e3)),
            Spacing = Scaled(settings.Spacing, settings.SpacingSigma),
            Length = Scaled(settings.Length, settings.LengthSigma),
            Period = new(settings.Period, periodSigma),
            Swing = new(settings.Swing * Math.PI / 180, 0),
            RigMass = Scaled(settings.RigMass, 0),
            RigInertia = Scaled(settings.RigInertia, 0),
        };
        WithSigma inertia;
        try
        {
            inertia = test.Inertia();
        }
        catch (FitException error)
        {
            throw new UserError(error.Diagnostics);
        }
        string key = settings.Axis switch { "roll" => "measured.ixx_g_m2", "pitch" => "measured.iyy_g_m2", _ => "measured.izz_g_m2" };
        double value = 1e3 * inertia.Value, wide = 2e3 * inertia.Sigma;
        UserError? misplaced = path is null
            ? null
            : MeasuredCopy.Write(settings.Build, build, path, settings.Force, [new MeasuredNumber(key, value - wide, value, value + wide)]);
        if (misplaced is not null) path = null;
        Print(settings, build, test, inertia, key, path);
        if (misplaced is not null) throw misplaced;
        return ExitCode.Ok;

        static WithSigma Scaled(double value, double sigma) => new(1e-3 * value, 1e-3 * sigma);
    }

    private static void Print(Settings settings, AssembledBuild build, SwingTest test, WithSigma inertia, string key, string? path)
    {
        Mat3 parts = build.Craft.I_BBcm_B;
        double before = settings.Axis switch { "roll" => parts.M00, "pitch" => parts.M11, _ => parts.M22 };
        IReadOnlyList<(string Name, double Share)> shares = test.Shares();
        if (settings.Json)
        {
            JsonOutput.Print(new()
            {
                ["build"] = build.Build.Name,
                ["axis"] = settings.Axis,
                ["key"] = key,
                ["inertia_kg_m2"] = inertia.Value,
                ["standard_deviation_kg_m2"] = inertia.Sigma,
                ["before_kg_m2"] = before,
                ["mass_kg"] = build.Craft.Mass,
                ["variance_shares"] = shares.ToDictionary(share => share.Name.Replace(' ', '_'), share => share.Share),
                ["written"] = path,
                ["cautions"] = FitCautions.OfSwing(inertia.Value, before),
            });
            return;
        }
        double off = 100 * ((inertia.Value / before) - 1), error = 200 * inertia.Sigma / inertia.Value;
        string than = Math.Abs(off) < 0.5 ? "as much as" : $"{Math.Abs(off):F0} % {(off > 0 ? "more" : "less")} than";
        string verb = settings.Axis switch { "roll" => "rolling", "pitch" => "pitching", _ => "yawing" };
        Console.WriteLine($"{build.Build.Name} resists {verb} with {1e3 * inertia.Value:G4} g m2 +- {error:F1} % (95 %), {than} the build said ({1e3 * before:G4} g m2).");
        foreach (string caution in FitCautions.OfSwing(inertia.Value, before)) Console.WriteLine(caution);
        Console.WriteLine();
        Console.WriteLine($"Two wires {settings.Spacing:G5} mm apart and {settings.Length:G5} mm long, {settings.Mass:G5} g, {settings.Period:G5} s +- {test.Period.Sigma:G3} s for a swing{(settings.Swing > 0 ? $" of {settings.Swing:G3} degrees to either side" : "")}.");
        Console.WriteLine("The uncertainty comes from: " + string.Join(", ", shares.Select(share => $"{share.Name} {100 * share.Share:F0} %")) + ".");
        double weighed = 1e3 * build.Craft.Mass;
        if (Math.Abs(settings.Mass - weighed) > 0.02 * weighed)
            Console.WriteLine($"The build weighs {weighed:F0} g and what swung {settings.Mass:F0} g: swing it ready to fly, or the inertia is that of another craft.");
        Console.WriteLine("The balance point must hang midway between the wires, the axis vertical, and the wires parallel.");
        Console.WriteLine();
        if (path is not null) Console.WriteLine($"Written to {path} as {key}, a copy of the build; the build itself is as it was.");
        Console.WriteLine("Propellers belong to the inertia and must not turn: swing the craft with the pack strapped down but unplugged, over something soft.");
    }
}
