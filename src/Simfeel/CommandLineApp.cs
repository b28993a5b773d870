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
        Dictionary<string, Type> verbs = [];
        CommandApp<DemoCommand> app = Create(interceptor, verbs);
        MisuseReport misuse = new(verbs);
        try
        {
            // the parser fails over an option without a name, and takes what follows a bare -- for no verb's
            if (args.FirstOrDefault(arg => arg == "--" || arg.StartsWith("--=", StringComparison.Ordinal) || arg.StartsWith("--:", StringComparison.Ordinal)) is string nameless)
                throw misuse.Of($"'{nameless}' names no option.", args);
            return app.Run(args, stop.Token);
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
            return ErrorReport.Write(root as UserError ?? misuse.Of(root.Message, args), json);
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

    /// <summary>Version of the program.</summary>
    public static string Version => typeof(CommandLineApp).Assembly.GetName().Version!.ToString(3);

    /// <param name="interceptor">As for <see cref="Run"/>.</param>
    /// <param name="verbs">Gets every verb's words and its command.</param>
    private static CommandApp<DemoCommand> Create(ICommandInterceptor? interceptor, Dictionary<string, Type> verbs)
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
            Verb<WeighCommand>(config, "weigh")
                .WithDescription("Mass, centre of gravity, inertia tensor and the share of every part.")
                .WithExample("weigh", "wagtail")
                .WithExample("weigh", "mine.toml", "--json");
            Verb<StandCommand>(config, "stand")
                .WithDescription("A virtual thrust stand: thrust, current, efficiency and torque reserve over throttle.")
                .WithExample("stand", "wagtail")
                .WithExample("stand", "mine.toml", "--all", "--charge", "50")
                .WithExample("stand", "--propeller", "wagtail", "--rpm", "12000,24000", "--axial", "0..30", "--points", "7");
            Verb<BenchCommand>(config, "bench")
                .WithDescription("To the workbench and back: a worksheet for swing and balance tests, then the model held against the readings.")
                .WithExample("bench", "wagtail", "--worksheet", "bench.html", "--template", "mine-bench.toml")
                .WithExample("bench", "wagtail", "--results", "mine-bench.toml", "--out", "wagtail-measured.toml");
            config.AddBranch("fit", fit =>
            {
                fit.SetDescription("Measurements into a copy of a build: a thrust table, or a swing test with fit swing.");
                fit.SetDefaultCommand<FitStandCommand>();
                verbs["fit"] = typeof(FitStandCommand);
                FitVerb<FitStandCommand>(fit, "stand")
                    .WithDescription("A thrust table into propeller and motor constants; the word stand may be left out.")
                    .WithExample("fit", "stand", "stand.csv", "--build", "wagtail");
                FitVerb<FitSwingCommand>(fit, "swing")
                    .WithDescription("A bifilar swing test into a moment of inertia.")
                    .WithExample("fit", "swing", "--build", "wagtail", "--axis", "roll", "--mass-g", "598", "--spacing-mm", "200", "--length-mm", "1000", "--period-s", "1.2");
            });
            Verb<CompareCommand>(config, "compare")
                .WithDescription("Flies two builds through the drills and says how they differ.")
                .WithExample("compare", "wagtail", "curlew")
                .WithExample("compare", "wagtail", "curlew", "--sheet", "sheet.html")
                .WithExample("compare", "mine.toml", "other.toml", "--effort", "0.5", "--json");
            Verb<BlameCommand>(config, "blame")
                .WithDescription("Which parts are to blame for a difference between two builds, and for how much of it.")
                .WithExample("blame", "wagtail", "curlew", "--metric", "stop_time")
                .WithExample("blame", "wagtail", "curlew", "--metric", "stop_time,catch_time", "--order");
            Verb<GrowCommand>(config, "grow")
                .WithDescription("A metric against the growth of one part: where the cure stops working, and what ends it.")
                .WithExample("grow", "wagtail", "--by", "motor.volume", "--metric", "stop_time")
                .WithExample("grow", "curlew", "--by", "propeller.diameter", "--metric", "stop_time", "--like", "wagtail");
            Verb<SweepCommand>(config, "sweep")
                .WithDescription("Many variants of a build, on a grid or a Latin hypercube: a table and its Pareto front. Goes on where it was stopped.")
                .WithExample("sweep", "wagtail", "--vary", "motor.volume=0.6..1.8", "--vary", "propeller.diameter=0.9..1.05")
                .WithExample("sweep", "wagtail", "--vary", "motor.volume=0.6..1.8", "--vary", "battery.mass=0.7..1.6", "--samples", "1000", "--out", "sweep.parquet,sweep.csv");
            Verb<SweepMergeCommand>(config, "sweep-merge")
                .WithDescription("Puts the shares of a sweep together.")
                .WithExample("sweep-merge", "sweep.parquet", "sweep.parquet.share-1-of-2", "sweep.parquet.share-2-of-2");
            Verb<LessonCommand>(config, "lesson")
                .WithDescription("A guided experiment: a question first, then two craft that differ in one thing, and why. Without a name: the list.")
                .WithExample("lesson", "ballast-to-the-tips")
                .WithExample("lesson", "size", "--value", "x0.5")
                .WithExample("lesson", "mine.toml", "--hands", "3,7,2", "--log", "class.csv", "--sheet", "lesson.html");
            Verb<FlyCommand>(config, "fly")
                .WithDescription("The window: fly two builds back to back over Gull Point, record it, fly it again.")
                .WithExample("fly")
                .WithExample("fly", "wagtail", "curlew", "--record", "flight.arrow")
                .WithExample("fly", "wagtail", "curlew", "--blind", "triangle")
                .WithExample("fly", "--replay", "flight.arrow", "--video", "flight.mp4");
            Verb<VotesCommand>(config, "votes")
                .WithDescription("Votes of blind flights against chance, and the feel bands that follow from them.")
                .WithExample("votes", "votes.csv");
            Verb<TourCommand>(config, "tour")
                .WithDescription("Draws the pictures of the README's tour, without a screen.")
                .WithExample("tour", "pictures");
            Verb<ValidateCommand>(config, "validate")
                .WithDescription("The rotor model beside published measurements: how far apart they are, and pictures of it.")
                .WithExample("validate")
                .WithExample("validate", "--plots", "pictures")
                .WithExample("validate", "--json");
            Verb<DoctorCommand>(config, "doctor")
                .WithDescription("What this machine has: processor, libraries, display, and the delays that every drill uses.")
                .WithExample("doctor")
                .WithExample("doctor", "--hash")
                .WithExample("doctor", "--repro", "simfeel-fault-rotorair-5000-0.txt");
        });
        return app;

        ICommandConfigurator Verb<T>(IConfigurator config, string name)
            where T : class, ICommand
        {
            verbs[name] = typeof(T);
            return config.AddCommand<T>(name);
        }

        ICommandConfigurator FitVerb<T>(IConfigurator<CommandSettings> fit, string name)
            where T : class, ICommandLimiter<CommandSettings>
        {
            verbs["fit " + name] = typeof(T);
            return fit.AddCommand<T>(name);
        }
    }
}
