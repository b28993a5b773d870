using Simfeel.CommandLine.Commands;
using Simfeel.CommandLine.Output;
using Simfeel.Flight;
using Simfeel.Physics.Guards;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine;

/// <summary>The command line: verbs, help, and one clear message for every error.</summary>
internal static class CommandLineApp
{
    /// <summary>Runs a command line and returns the exit code.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="interceptor">Called with what was read before a verb begins to work; for tests.</param>
    public static int Run(string[] args, ICommandInterceptor? interceptor = null)
    {
        Console.OutputEncoding = System.Text.Encoding.UTF8;
        if (Console.IsOutputRedirected) AnsiConsole.Profile.Width = 120;
        bool json = args.Contains("--json");
        using CancellationTokenSource stop = new();
        // the first Ctrl+C lets the work in hand be kept, the second ends the program
        Console.CancelKeyPress += (_, press) =>
        {
            press.Cancel = !stop.IsCancellationRequested;
            if (!press.Cancel) return;
            Console.Error.WriteLine("Stopping; Ctrl+C again ends at once.");
            stop.Cancel();
        };
        try
        {
            // the parser fails over an option without a name, and takes what follows a bare -- for no verb's
            if (args.FirstOrDefault(arg => arg == "--" || arg.StartsWith("--=", StringComparison.Ordinal) || arg.StartsWith("--:", StringComparison.Ordinal)) is string nameless)
                throw new UserError($"'{nameless}' names no option. Try: ./simfeel --help", ExitCode.Misuse);
            return Create(interceptor).Run(args, stop.Token);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Ok;
        }
        catch (UserError error)
        {
            return ErrorReport.Write(error, json);
        }
        catch (Exception error) when (FaultFile.In(error) is FlightFaultException fault)
        {
            return FaultReport.Write(fault, json, Environment.CurrentDirectory);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Told(new UserError("Stopped: " + error.Message, ExitCode.Environment));
        }
        catch (Exception error) when (error is CommandParseException or CommandRuntimeException)
        {
            Exception root = error.InnerException is UserError inner ? inner : error;
            return ErrorReport.Write(
                root as UserError ?? new UserError(Named(root.Message, args) + " Try: ./simfeel --help", ExitCode.Misuse), json);
        }
    }

    /// <summary>Mostly the output itself could not be written, such as to a full disk behind a redirection; the error goes elsewhere.</summary>
    private static int Told(UserError error)
    {
        try
        {
            return ErrorReport.Write(error, json: false);
        }
        catch (IOException)
        {
            // nobody can be told but by the exit code
            return error.ExitCode;
        }
    }

    /// <summary>The parser says which value it could not read but not of which option; this adds the option's name.</summary>
    private static string Named(string message, string[] args)
    {
        if (message.Contains($"'{OutputSettings.NoValue}'", StringComparison.Ordinal))
            return $"{args.LastOrDefault(arg => arg.StartsWith("--", StringComparison.Ordinal) && arg != "--json")} needs a value.";
        for (int n = 1; n < args.Length; n++)
        {
            if (args[n - 1].StartsWith("--", StringComparison.Ordinal) && message.StartsWith($"Failed to convert '{args[n]}'", StringComparison.Ordinal))
                return $"{args[n - 1]} is '{args[n]}'; it must be a {(message.Contains("Int32", StringComparison.Ordinal) ? "whole number" : "number")}.";
        }
        return message;
    }

    /// <summary>Version of the program.</summary>
    public static string Version => typeof(CommandLineApp).Assembly.GetName().Version!.ToString(3);

    private static CommandApp<DemoCommand> Create(ICommandInterceptor? interceptor)
    {
        CommandApp<DemoCommand> app = new();
        app.WithDescription("Compares how two multirotor builds fly, computed from their parts. Without a verb: the demo. ./simfeel test runs the tests.");
        app.Configure(config =>
        {
            config.SetApplicationName("./simfeel");
            config.SetApplicationVersion(Version);
            config.PropagateExceptions();
            config.UseStrictParsing();
            config.SetInterceptor(new ValueCheck(interceptor));
            config.AddCommand<WeighCommand>("weigh")
                .WithDescription("Mass, centre of gravity, inertia tensor and the share of every part.")
                .WithExample("weigh", "wagtail")
                .WithExample("weigh", "mine.toml", "--json");
            config.AddCommand<StandCommand>("stand")
                .WithDescription("A virtual thrust stand: thrust, current, efficiency and torque reserve over throttle.")
                .WithExample("stand", "wagtail")
                .WithExample("stand", "mine.toml", "--all", "--charge", "50")
                .WithExample("stand", "--propeller", "wagtail", "--rpm", "12000,24000", "--axial", "0..30", "--points", "7");
            config.AddCommand<BenchCommand>("bench")
                .WithDescription("To the workbench and back: a worksheet for swing and balance tests, then the model held against the readings.")
                .WithExample("bench", "wagtail", "--worksheet", "bench.html", "--template", "mine-bench.toml")
                .WithExample("bench", "wagtail", "--results", "mine-bench.toml", "--out", "wagtail-measured.toml");
            config.AddBranch("fit", fit =>
            {
                fit.SetDescription("Measurements into a copy of a build: a thrust table, or a swing test with fit swing.");
                fit.SetDefaultCommand<FitStandCommand>();
                fit.AddCommand<FitStandCommand>("stand")
                    .WithDescription("A thrust table into propeller and motor constants; the word stand may be left out.")
                    .WithExample("fit", "stand", "stand.csv", "--build", "wagtail");
                fit.AddCommand<FitSwingCommand>("swing")
                    .WithDescription("A bifilar swing test into a moment of inertia.")
                    .WithExample("fit", "swing", "--build", "wagtail", "--axis", "roll", "--mass-g", "598", "--spacing-mm", "200", "--length-mm", "1000", "--period-s", "1.2");
            });
            config.AddCommand<CompareCommand>("compare")
                .WithDescription("Flies two builds through the drills and says how they differ.")
                .WithExample("compare", "wagtail", "curlew")
                .WithExample("compare", "wagtail", "curlew", "--sheet", "sheet.html")
                .WithExample("compare", "mine.toml", "other.toml", "--effort", "0.5", "--json");
            config.AddCommand<BlameCommand>("blame")
                .WithDescription("Which parts are to blame for a difference between two builds, and for how much of it.")
                .WithExample("blame", "wagtail", "curlew", "--metric", "stop_time")
                .WithExample("blame", "wagtail", "curlew", "--metric", "stop_time,catch_time", "--order");
            config.AddCommand<GrowCommand>("grow")
                .WithDescription("A metric against the growth of one part: where the cure stops working, and what ends it.")
                .WithExample("grow", "wagtail", "--by", "motor.volume", "--metric", "stop_time")
                .WithExample("grow", "curlew", "--by", "propeller.diameter", "--metric", "stop_time", "--like", "wagtail");
            config.AddCommand<SweepCommand>("sweep")
                .WithDescription("Many variants of a build, on a grid or a Latin hypercube: a table and its Pareto front. Goes on where it was stopped.")
                .WithExample("sweep", "wagtail", "--vary", "motor.volume=0.6..1.8", "--vary", "propeller.diameter=0.9..1.05")
                .WithExample("sweep", "wagtail", "--vary", "motor.volume=0.6..1.8", "--vary", "battery.mass=0.7..1.6", "--samples", "1000", "--out", "sweep.parquet,sweep.csv");
            config.AddCommand<SweepMergeCommand>("sweep-merge")
                .WithDescription("Puts the shares of a sweep together.")
                .WithExample("sweep-merge", "sweep.parquet", "sweep.parquet.share-1-of-2", "sweep.parquet.share-2-of-2");
            config.AddCommand<LessonCommand>("lesson")
                .WithDescription("A guided experiment: a question first, then two craft that differ in one thing, and why. Without a name: the list.")
                .WithExample("lesson", "ballast-to-the-tips")
                .WithExample("lesson", "size", "--value", "x0.5")
                .WithExample("lesson", "mine.toml", "--hands", "3,7,2", "--log", "class.csv", "--sheet", "lesson.html");
            config.AddCommand<FlyCommand>("fly")
                .WithDescription("The window: fly two builds back to back over Gull Point, record it, fly it again.")
                .WithExample("fly")
                .WithExample("fly", "wagtail", "curlew", "--record", "flight.arrow")
                .WithExample("fly", "wagtail", "curlew", "--blind", "triangle")
                .WithExample("fly", "--replay", "flight.arrow", "--video", "flight.mp4");
            config.AddCommand<VotesCommand>("votes")
                .WithDescription("Votes of blind flights against chance, and the feel bands that follow from them.")
                .WithExample("votes", "votes.csv");
            config.AddCommand<TourCommand>("tour")
                .WithDescription("Draws the pictures of the README's tour, without a screen.")
                .WithExample("tour", "pictures");
            config.AddCommand<ValidateCommand>("validate")
                .WithDescription("The rotor model beside published measurements: how far apart they are, and pictures of it.")
                .WithExample("validate")
                .WithExample("validate", "--plots", "pictures")
                .WithExample("validate", "--json");
            config.AddCommand<DoctorCommand>("doctor")
                .WithDescription("What this machine has: processor, libraries, display, and the delays that every drill uses.")
                .WithExample("doctor")
                .WithExample("doctor", "--hash")
                .WithExample("doctor", "--repro", "simfeel-fault-rotorair-5000-0.txt");
        });
        return app;
    }
}
