using System.ComponentModel;
using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Stand;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel stand</c>: the virtual thrust stand.</summary>
internal sealed class StandCommand : Command<StandCommand.Settings>
{
    internal sealed class Settings : AirSettings
    {
        // no option can be this; a nullable number would lose the parser's word that a whole one is wanted
        private const int Unset = int.MinValue;

        [CommandArgument(0, "[BUILD]")]
        [Description("A build file, or the name of a starter build such as wagtail.")]
        public string? Build { get; init; }

        [CommandOption("--all")]
        [Description("All motors pull on the pack at once, as in flight; else one alone, as on a bench.")]
        public bool All { get; init; }

        [CommandOption("--charge <PERCENT>")]
        [Description("Charge of the pack, 5 to 100 percent. Default 90.")]
        public double? Charge { get; init; }

        [CommandOption("--steps <COUNT>")]
        [Description("Rows from closed to full throttle, 2 to 101. Default 11.")]
        public int Steps { get; init; } = Unset;

        [CommandOption("--wear <PERCENT>")]
        [Description("Age of the pack, 0 new to 100 worn out, in place of the build's own.")]
        public double? Wear { get; init; }

        [CommandOption("--propeller <FILE>")]
        [Description("In place of a build: a propeller alone in a wind tunnel at the speeds of --rpm; a build, or a file with only a [[propeller]] table.")]
        public string? Propeller { get; init; }

        [CommandOption("--rpm <LIST>")]
        [Description("Wind tunnel: rotor speeds in rpm, parted by commas, 10 to 300000. Required with --propeller.")]
        public string? Rpm { get; init; }

        [CommandOption("--axial <RANGE>")]
        [Description("Wind tunnel: flow along the shaft in m/s, FROM..TO or one number, -100 to 150, positive in climb and forward flight. Default 0.")]
        public string? Axial { get; init; }

        [CommandOption("--edgewise <RANGE>")]
        [Description("Wind tunnel: flow in the disc's plane in m/s, FROM..TO or one number, 0 to 150. Default 0.")]
        public string? Edgewise { get; init; }

        [CommandOption("--points <COUNT>")]
        [Description("Wind tunnel: values in a range, 2 to 101. Default 11.")]
        public int Points { get; init; } = Unset;

        /// <summary>Charge of the pack, 0 to 1.</summary>
        public double StateOfCharge => (Charge ?? 90) / 100;

        /// <summary>Rows of the table.</summary>
        public int Rows => Steps == Unset ? 11 : Steps;

        /// <summary>Values in a range of the wind tunnel.</summary>
        public int ValuesInRange => Points == Unset ? 11 : Points;

        public override ValidationResult Validate()
        {
            if (Charge is not (null or (>= 5 and <= 100))) return ValidationResult.Error($"--charge is {Charge}; it must lie between 5 and 100 percent.");
            if (Steps is not (Unset or (>= 2 and <= 101))) return ValidationResult.Error($"--steps is {Steps}; it must lie between 2 and 101.");
            if (Wear is not (null or (>= 0 and <= 100))) return ValidationResult.Error($"--wear is {Wear}; it must lie between 0 and 100 percent.");
            return OneMode() is string fault ? ValidationResult.Error(fault) : base.Validate();
        }

        /// <summary>A build on the stand or a propeller in the tunnel, each with its own options; null where that is so.</summary>
        private string? OneMode()
        {
            bool tunnel = Rpm is not null || Axial is not null || Edgewise is not null || Points != Unset;
            bool bench = All || Charge is not null || Steps != Unset || Wear is not null;
            if (Propeller is null)
                return Build is null ? "Missing required argument 'BUILD'." : tunnel ? "--rpm, --axial, --edgewise and --points belong to the wind tunnel; name its propeller with --propeller." : null;
            if (Build is not null) return "Name a build for the stand or a --propeller for the wind tunnel, not both.";
            if (bench) return "--all, --charge, --steps and --wear belong to a build on the stand; the wind tunnel of --propeller has no motor and no pack.";
            try
            {
                _ = WindTunnelRun.States(this);
                return null;
            }
            catch (FormatException fault)
            {
                return fault.Message;
            }
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Propeller is not null)
        {
            WindTunnelRun.Print(settings);
            return ExitCode.Ok;
        }
        AssembledBuild build = BuildLibrary.Load(settings.Build!, settings.Air);
        if (settings.Wear is double wear)
            build = BuildAssembler.Assemble(BuildEditor.Edit(build.Build, "battery.wear_percent", wear).Build!, settings.Air);
        int running = settings.All ? build.Craft.Rotors.Count : 1;
        // on a bench nothing but the motor draws on the pack
        Craft craft = settings.All
            ? build.Craft
            : build.Craft with { Battery = build.Craft.Battery with { ElectronicsPower = 0 } };
        VirtualStand stand = new(craft, settings.Air.Density, settings.StateOfCharge, running);
        (double Throttle, OperatingPoint Point)[] rows = new (double, OperatingPoint)[settings.Rows];
        Parallel.For(0, rows.Length, n =>
        {
            double throttle = n / (settings.Rows - 1.0);
            rows[n] = (throttle, stand.AtDuty(throttle));
        });
        TiredPack tired = TiredPack.Of(build.Build, settings.Air);
        if (settings.Json) PrintJson(build, settings, running, rows, tired);
        else PrintTable(build, settings, running, rows, tired);
        return ExitCode.Ok;
    }

    private static void PrintJson(AssembledBuild build, Settings settings, int running, (double Throttle, OperatingPoint Point)[] rows, TiredPack tired) =>
        JsonOutput.Print(new()
        {
            ["name"] = build.Build.Name,
            ["motors_running"] = running,
            ["state_of_charge"] = settings.StateOfCharge,
            ["wear_percent"] = 100 * build.Build.Battery.Wear,
            ["air_density_kg_m3"] = settings.Air.Density,
            ["rows"] = rows.Select(row => new Dictionary<string, object?>
            {
                ["throttle"] = row.Throttle,
                ["thrust_N"] = row.Point.Thrust,
                ["torque_Nm"] = row.Point.Torque,
                ["rpm"] = Rpm(row.Point),
                ["pack_voltage_V"] = row.Point.PackVoltage,
                ["motor_current_A"] = row.Point.MotorCurrent,
                ["pack_current_A"] = row.Point.PackCurrent,
                ["power_W"] = row.Point.PackPower,
                ["grams_per_watt"] = GramsPerWatt(row.Point, running),
                ["reserve_up_Nm"] = row.Point.ReserveUp,
                ["reserve_down_Nm"] = row.Point.ReserveDown,
            }).ToList(),
            ["tired_pack"] = TiredPackOutput.Json(tired),
        });

    private static void PrintTable(AssembledBuild build, Settings settings, int running, (double Throttle, OperatingPoint Point)[] rows, TiredPack tired)
    {
        OperatingPoint full = rows[^1].Point;
        string running_ = running == 1 ? "one motor on a bench" : $"all {running} motors on one pack";
        string worn = build.Build.Battery.Wear > 0 ? $" and {100 * build.Build.Battery.Wear:F0} percent worn" : "";
        Console.WriteLine($"{build.Build.Name}, {running_}, pack at {100 * settings.StateOfCharge:F0} percent{worn}:");
        Console.WriteLine($"at full throttle each rotor lifts {full.Thrust / TradeUnits.GramForce:F0} grams-force at {Rpm(full):F0} rpm, and the pack gives {full.PackCurrent:F0} amperes.");
        Console.WriteLine();
        Table table = Tables.New(
            "throttle %", "thrust gf", "torque N m", "rpm", "pack V", "motor A", "pack A", "power W", "gf/W", "reserve up N m", "down N m");
        foreach ((double throttle, OperatingPoint at) in rows)
        {
            table.AddRow(
                $"{100 * throttle:F0}", $"{at.Thrust / TradeUnits.GramForce:F0}", $"{at.Torque:F4}", $"{Rpm(at):F0}", $"{at.PackVoltage:F2}",
                $"{at.MotorCurrent:F1}", $"{at.PackCurrent:F1}", $"{at.PackPower:F0}", $"{GramsPerWatt(at, running):F1}",
                Tables.Signed(at.ReserveUp, 3), Tables.Signed(at.ReserveDown, 3));
        }
        Tables.Print(table);
        Console.WriteLine("Throttle is the speed controller's duty. Thrust, torque and motor current are of one rotor; pack, power and gf/W of "
            + (settings.All ? "the whole craft, electronics included." : "this one motor, without the craft's electronics."));
        Console.WriteLine("Reserve: motor torque still to be had at this speed, up (full throttle) and down (braking). Static air; no airframe behind the disc.");
        Console.WriteLine(TiredPackOutput.Sentence(tired));
        Console.WriteLine("This one cannot bite; a real stand can: bolt it down, stay out of the disc's plane, and keep people away.");
        Provenance.Print(build, "motor", "propeller", "speed_controller", "battery");
    }

    private static double Rpm(OperatingPoint point) => point.Speed * TradeUnits.RpmPerRadian;

    /// <summary>Thrust of all running rotors by the power out of the pack; 0 at rest.</summary>
    private static double GramsPerWatt(OperatingPoint point, int running) =>
        point.Thrust > 0 ? point.Thrust * running / TradeUnits.GramForce / point.PackPower : 0;
}
