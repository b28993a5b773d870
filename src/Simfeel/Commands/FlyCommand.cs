using System.ComponentModel;
using System.Globalization;
using Simfeel.Builds;
using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Platform;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Blind;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel fly</c>: the window.</summary>
internal sealed class FlyCommand : Command<FlyCommand.Settings>
{
    internal sealed class Settings : SiteSettings
    {
        [CommandArgument(0, "[A]")]
        [Description("A build file, or the name of a starter build. With both builds the flight starts at once, else the start page asks.")]
        public string? A { get; init; }

        [CommandArgument(1, "[B]")]
        [Description("The build to swap with.")]
        public string? B { get; init; }

        [CommandOption("--field <FILE>")]
        [Description("A field file, or the name of a field that comes along. Default gull-point.")]
        public string Field { get; init; } = "gull-point";

        [CommandOption("--record <FILE>")]
        [Description("Record every input and what came of it, such as flight.arrow (Apache Arrow stream).")]
        public string? Record { get; init; }

        [CommandOption("--replay <FILE>")]
        [Description("Fly a recording again and look on; compared with it bit for bit.")]
        public string? Replay { get; init; }

        [CommandOption("--video <FILE>")]
        [Description("With --replay: make a video of it, such as flight.mp4, without a window. Needs ffmpeg.")]
        public string? Video { get; init; }

        [CommandOption("--blind <KIND>")]
        [Description("Blind flights: triangle (three flights, which is the odd one?) or pair (two flights, same or different?). Needs both builds.")]
        public string? BlindKind { get; init; }

        [CommandOption("--trials <COUNT>")]
        [Description("With --blind: trials to vote on, 1 to 60. Default 12.")]
        public int? Trials { get; init; }

        [CommandOption("--controls <COUNT>")]
        [Description("With --blind: further trials in which every flight is the same build, 0 to 60. Default 3.")]
        public int? Controls { get; init; }

        [CommandOption("--late <MS>")]
        [Description("With --blind: delay added to the picture whenever the second build is flown, 0 to 300 ms. Name the same build twice to feel the delay alone.")]
        public double? Late { get; init; }

        [CommandOption("--votes <FILE>")]
        [Description("With --blind: table that votes are added to. Default votes.csv among your pictures.")]
        public string? Votes { get; init; }

        [CommandOption("--wind <MPS>")]
        [Description("Wind from the north at 6 m above the ground with its gusts, 0 (still air, default) to 15 m/s; 7.7 is light, 15 moderate turbulence.")]
        public double Wind { get; init; }

        [CommandOption("--size <WxH>")]
        [Description("Size of the picture in pixels, such as 1280x720 (default); 320x180 to 7680x4320, even numbers.")]
        public string Size { get; init; } = "1280x720";

        /// <summary>Strongest wind, m/s: no craft of these sizes is flown in more.</summary>
        private const double StrongestWind = 15;

        /// <summary>Size of the picture, pixels.</summary>
        public (int Width, int Height)? Pixels
        {
            get
            {
                string[] parts = Size.Split('x');
                if (parts.Length != 2
                    || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int width)
                    || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int height)) return null;
                return width is >= 320 and <= 7680 && height is >= 180 and <= 4320 && width % 2 == 0 && height % 2 == 0 ? (width, height) : null;
            }
        }

        public override ValidationResult Validate()
        {
            // before the checks below, which would blame what stands in its place
            if (ValueCheck.Missing(this) is string bare) return ValidationResult.Error($"{bare} needs a value.");
            if (Blindness() is ValidationResult wrong) return wrong;
            if (Json) return ValidationResult.Error("fly opens a window and has no --json.");
            if (!(Wind >= 0 && Wind <= StrongestWind)) return ValidationResult.Error($"--wind is {Wind.ToString(CultureInfo.InvariantCulture)}; it must lie between 0 and {StrongestWind} m/s.");
            if (Pixels is null) return ValidationResult.Error($"--size is '{Size}'; it must be like 1280x720: even numbers, 320x180 to 7680x4320.");
            if (Video is not null && Replay is null) return ValidationResult.Error("--video needs --replay: record first, then make the video.");
            if (Replay is not null && (A is not null || Record is not null))
                return ValidationResult.Error("--replay flies the recording's own builds; leave builds and --record away.");
            return base.Validate();
        }

        /// <summary>How blind flights are flown; null for open ones.</summary>
        public BlindOptions? Blind => BlindKind is null || BlindTest.Parse(BlindKind) is not BlindTest test
            ? null
            : new(test, Trials ?? 12, Controls ?? 3, (Late ?? 0) / 1000) { VotesFile = Votes };

        private ValidationResult? Blindness()
        {
            if (BlindKind is null)
                return Trials is null && Controls is null && Late is null && Votes is null ? null : ValidationResult.Error("--trials, --controls, --late and --votes go with --blind.");
            if (BlindTest.Parse(BlindKind) is null) return ValidationResult.Error($"--blind is '{BlindKind}'; it must be {string.Join(" or ", BlindTest.All.Select(test => test.Word))}.");
            if (B is null) return ValidationResult.Error("--blind needs both builds; name the same one twice with --late to feel a delay alone.");
            if (Trials is < 1 or > BlindOptions.MostTrials) return ValidationResult.Error($"--trials is {Trials}; it must lie between 1 and {BlindOptions.MostTrials}.");
            if (Controls is < 0 or > BlindOptions.MostTrials) return ValidationResult.Error($"--controls is {Controls}; it must lie between 0 and {BlindOptions.MostTrials}.");
            if (Late is not null && !(Late is >= 0 and <= 1000 * BlindOptions.LongestLate)) return ValidationResult.Error($"--late is {Late}; it must lie between 0 and {1000 * BlindOptions.LongestLate:F0} ms.");
            return Replay is null ? null : ValidationResult.Error("--blind is for flights, not for a replay.");
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Directory.Exists(settings.Replay)) throw new UserError($"{settings.Replay} is a folder; name a file.");
        if (settings.Replay is not null && !File.Exists(settings.Replay)) throw new UserError($"There is no file '{settings.Replay}'.");
        CheckFolder(settings.Record);
        CheckFolder(settings.Video);
        CheckFolder(settings.Votes);
        // copies of one build are found when they are read
        if (settings.Blind is { Late: 0 } && Path.GetFullPath(BuildLibrary.PathOf(settings.A!)) == Path.GetFullPath(BuildLibrary.PathOf(settings.B!)))
            throw new UserError(BlindOptions.NothingToTell(settings.A!));
        CockpitOptions options = new()
        {
            A = Checked(settings.A),
            B = Checked(settings.B),
            StraightToTheField = settings.B is not null,
            FieldFile = FieldFile(settings.Field),
            Air = settings.Air,
            Conditions = new() { Seed = settings.Seed, Effects = settings.Effects, WindSpeed = settings.Wind },
            Record = settings.Record,
            Replay = settings.Replay,
            Blind = settings.Blind,
            PictureFolder = UserFolder.Output,
            Size = settings.Pixels!.Value,
        };
        try
        {
            if (settings.Video is null)
            {
                CockpitStart.Fly(options);
                return ExitCode.Ok;
            }
            Console.WriteLine(WorkProgress.Run("Drawing the video", progress => CockpitStart.Video(options, settings.Video, progress)));
            Console.WriteLine($"Video: {settings.Video}");
            return ExitCode.Ok;
        }
        catch (MissingOnMachineException missing)
        {
            throw new UserError(missing.Message, ExitCode.Environment);
        }
        catch (UnusableFileException file)
        {
            throw new UserError(file.Message);
        }
        catch (IOException error)
        {
            throw new UserError(error.Message, ExitCode.Environment);
        }
    }

    /// <summary>Says before the flight that a file has nowhere to go.</summary>
    private static void CheckFolder(string? file)
    {
        if (file is null) return;
        string folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        if (!Directory.Exists(folder)) throw new UserError($"{file}: there is no folder '{folder}'.");
        if (Directory.Exists(file)) throw new UserError($"{file} is a folder; name a file.");
    }

    /// <summary>A build's name or path, after a look whether there is one.</summary>
    private static string? Checked(string? build)
    {
        if (build is null) return null;
        BuildLibrary.PathOf(build);
        return build;
    }

    private static string FieldFile(string nameOrPath)
    {
        BuildShelf shelf = new(Path.Combine(AppContext.BaseDirectory, "fields"));
        return shelf.PathOf(nameOrPath)
            ?? throw new UserError($"There is no file and no field called '{nameOrPath}'. Fields: {string.Join(", ", shelf.Names)}.");
    }
}
