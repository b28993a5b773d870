using System.ComponentModel;
using System.Globalization;
using Simfeel.Builds;
using Simfeel.Builds.Reading;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Lessons;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel lesson</c>: predict, see, explain.</summary>
internal sealed class LessonCommand : Command<LessonCommand.Settings>
{
    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "[LESSON]")]
        [Description("Name of a lesson that comes along, or a lesson file. Without it: the list.")]
        public string? Lesson { get; init; }

        [CommandOption("--build <BUILD>")]
        [Description("Another build to make both craft from: a file, or the name of a starter build. Default the lesson's own.")]
        public string? Build { get; init; }

        [CommandOption("--value <VALUE>")]
        [Description("Another value of what differs, for the second craft: a number, a word, or a factor such as x2 for a number of the build.")]
        public string? Value { get; init; }

        [CommandOption("--answer <LETTER>")]
        [Description("Your answer, given before anything is shown, such as b.")]
        public string? Answer { get; init; }

        [CommandOption("--hands <COUNTS>")]
        [Description("How many of a class chose each answer, such as 3,7,2.")]
        public string? Hands { get; init; }

        [CommandOption("--skip")]
        [Description("Do not ask.")]
        public bool Skip { get; init; }

        [CommandOption("--sheet <FILE>")]
        [Description("Write the lesson with answers, what the class said and the plot: .html or .md.")]
        public string? Sheet { get; init; }

        [CommandOption("--worksheet <FILE>")]
        [Description("Write the sheet that pupils fill in: .html or .md. Gives nothing away; with it nothing is asked and no result is printed.")]
        public string? Worksheet { get; init; }

        [CommandOption("--log <FILE>")]
        [Description("Add what was answered to a table (CSV), one line for each answer. No names.")]
        public string? Log { get; init; }

        public override ValidationResult Validate()
        {
            (string Name, string? Value)[] words =
                [("--build", Build), ("--value", Value), ("--answer", Answer), ("--hands", Hands), ("--sheet", Sheet), ("--worksheet", Worksheet), ("--log", Log)];
            if (words.FirstOrDefault(word => word.Value == NoValue).Name is string bare) return ValidationResult.Error($"{bare} needs a value.");
            if (Lesson is null && words.Any(word => word.Value is not null)) return ValidationResult.Error("Name a lesson. ./simfeel lesson lists them.");
            if (Value is not null && (Answer ?? Hands ?? Log) is not null) return ValidationResult.Error("--value is for trying things out; the question, --answer, --hands and --log belong to the lesson's own value.");
            if ((Answer is null ? 0 : 1) + (Hands is null ? 0 : 1) + (Skip ? 1 : 0) > 1) return ValidationResult.Error("Give one of --answer, --hands and --skip.");
            foreach ((string name, string? file) in new[] { ("--sheet", Sheet), ("--worksheet", Worksheet) })
            {
                if (file is not null && Path.GetExtension(file) is not (".html" or ".md")) return ValidationResult.Error($"{name} is '{file}'; the file name must end in .html or .md.");
            }
            if (Worksheet is not null && (Sheet ?? Log ?? Answer ?? Hands) is not null)
                return ValidationResult.Error("--worksheet gives nothing away; leave --sheet, --log, --answer and --hands for another run.");
            return base.Validate();
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Lesson is null)
        {
            LessonOutput.List(LessonShelf.All().Select(pair => pair.Lesson), settings.Json);
            return ExitCode.Ok;
        }
        (Lesson lesson, Build build) = Read(settings);
        LessonValue? own = settings.Value is null ? null : LessonReader.ValueOf(lesson.Change.Key, settings.Value);
        ClassAnswers? answers = Given(settings, lesson);
        foreach ((string option, string? file) in new[] { ("--sheet", settings.Sheet), ("--worksheet", settings.Worksheet), ("--log", settings.Log) })
        {
            if (file is not null) TextFile.CheckFolder(option, file);
        }
        if (settings.Worksheet is not null)
        {
            LessonResult flown = Fly(lesson, build, own);
            // the values to fill in are known without flying them
            LessonSheet blank = new(flown, [.. LessonTrial.Values(lesson).Select(value => new LessonTrial(value, double.NaN, ""))], null, DateOnly.FromDateTime(DateTime.Now), CommandLineApp.Version);
            TextFile.Write("--worksheet", settings.Worksheet, Text(blank, settings.Worksheet, false));
            Console.WriteLine($"Sheet to fill in: {settings.Worksheet}");
            return ExitCode.Ok;
        }
        // the question is about the lesson's own value
        if (answers is null && own is null && !settings.Skip && !settings.Json) answers = LessonOutput.Ask(lesson);
        LessonResult result = Fly(lesson, build, own);
        if (settings.Json) LessonOutput.PrintJson(result, answers);
        else LessonOutput.Print(result, answers);
        if (settings.Log is not null) AddToLog(settings.Log, result, answers ?? new(lesson.Choices.Count));
        if (settings.Sheet is not null)
        {
            LessonSheet sheet = new(result, LessonTrial.Over(lesson, build), answers, DateOnly.FromDateTime(DateTime.Now), CommandLineApp.Version);
            TextFile.Write("--sheet", settings.Sheet, Text(sheet, settings.Sheet, true));
            if (!settings.Json) Console.WriteLine($"Sheet: {settings.Sheet}");
        }
        return ExitCode.Ok;
    }

    private static (Lesson Lesson, Build Build) Read(Settings settings)
    {
        string file = LessonShelf.Files.PathOf(settings.Lesson!)
            ?? throw new UserError($"There is no file and no lesson called '{settings.Lesson}'.{NearestName.Choices(settings.Lesson!, "Lessons", LessonShelf.Files.Names)}.");
        LessonReading reading = LessonReader.Read(file);
        if (reading.Lesson is not Lesson lesson) throw new UserError(reading.Diagnostics);
        string path = settings.Build is not null
            ? BuildLibrary.PathOf(settings.Build)
            : LessonShelf.BuildFile(lesson, file) ?? throw new UserError($"{file}: lesson.build = \"{lesson.Build}\": there is no such file beside the lesson and no such starter build. Starter builds: {string.Join(", ", BuildLibrary.StarterNames)}.");
        BuildResult build = BuildReader.Read(path);
        return build.Build is null ? throw new UserError(build.Diagnostics) : (lesson, build.Build);
    }

    private static ClassAnswers? Given(Settings settings, Lesson lesson)
    {
        if (settings.Answer is string letter)
        {
            return LessonOutput.Parse(letter, lesson)
                ?? throw new UserError($"--answer is '{letter}'; it must be a letter from a to {char.ToLowerInvariant(Lesson.Letter(lesson.Choices.Count - 1))}.", ExitCode.Misuse);
        }
        if (settings.Hands is not string hands) return null;
        string[] parts = hands.Split(',');
        int[] counts = [.. parts.Select(part => int.TryParse(part, NumberStyles.None | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out int n) && n <= ClassAnswers.Most ? n : -1)];
        if (counts.Length != lesson.Choices.Count || counts.Contains(-1))
            throw new UserError($"--hands is '{hands}'; write {lesson.Choices.Count} whole numbers from 0 to {ClassAnswers.Most}, one for each answer, such as {string.Join(',', Enumerable.Range(1, lesson.Choices.Count))}.", ExitCode.Misuse);
        return new(counts);
    }

    private static LessonResult Fly(Lesson lesson, Build build, LessonValue? own)
    {
        try
        {
            return LessonRun.Fly(lesson, build, own);
        }
        catch (LessonException error)
        {
            throw new UserError($"{lesson.Name}: {error.Message}");
        }
    }

    private static void AddToLog(string path, LessonResult result, ClassAnswers answers)
    {
        try
        {
            ClassLog.Append(path, result, answers, DateOnly.FromDateTime(DateTime.Now), CommandLineApp.Version);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserError($"--log: {error.Message}", ExitCode.Environment);
        }
    }

    private static string Text(LessonSheet sheet, string path, bool withAnswers) =>
        Path.GetExtension(path) == ".md" ? sheet.Markdown(withAnswers) : sheet.Html(withAnswers);
}
