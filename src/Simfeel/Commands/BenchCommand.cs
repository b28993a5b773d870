using System.ComponentModel;
using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Simfeel.Studies.Bench.Reading;
using Simfeel.Studies.Fit;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel bench</c>: from the model to the workbench and back.</summary>
internal sealed class BenchCommand : Command<BenchCommand.Settings>
{
    internal sealed class Settings : OneBuildSettings
    {
        [CommandOption("--worksheet <FILE>")]
        [Description("Write a sheet to print for this build: how to hang and balance it, with room for readings. The ending says which kind: .html or .md.")]
        public string? Worksheet { get; init; }

        [CommandOption("--template <FILE>")]
        [Description("Write an empty readings file (.toml) with every key commented.")]
        public string? Template { get; init; }

        [CommandOption("--results <FILE>")]
        [Description("Readings to hold the model against.")]
        public string? Results { get; init; }

        [CommandOption("--sheet <FILE>")]
        [Description("With --results: write the result as a page (.html or .md).")]
        public string? Sheet { get; init; }

        [CommandOption("--out <FILE>")]
        [Description("With --results: write a copy of the build (.toml) with the measured numbers.")]
        public string? Out { get; init; }

        [CommandOption("--force")]
        [Description("Replace files that are there already.")]
        public bool Force { get; init; }

        /// <summary>Files to write, by option.</summary>
        public IEnumerable<(string Option, string Path)> Written =>
            ((string, string?)[])[("--worksheet", Worksheet), ("--template", Template), ("--sheet", Sheet), ("--out", Out)] is var all
                ? all.Where(pair => pair.Item2 is not null).Select(pair => (pair.Item1, pair.Item2!))
                : [];

        public override ValidationResult Validate()
        {
            if (Results is null && (Sheet ?? Out) is not null) return ValidationResult.Error($"{(Sheet is null ? "--out" : "--sheet")} needs --results: say which readings.");
            if (Results is not null && (Worksheet ?? Template) is not null) return ValidationResult.Error("--results goes without --worksheet and --template: those come before measuring.");
            foreach ((string option, string path) in Written)
            {
                if (path.StartsWith("--", StringComparison.Ordinal) || path == NoValue) return ValidationResult.Error($"{option} needs a file.");
                string[] endings = option is "--worksheet" or "--sheet" ? [".html", ".md"] : [".toml"];
                if (!endings.Contains(Path.GetExtension(path).ToLowerInvariant())) return ValidationResult.Error($"{option} is '{path}'; it must end in {string.Join(" or ", endings)}.");
            }
            return base.Validate();
        }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        foreach ((string option, string path) in settings.Written) BenchFiles.CheckPlace(option, path, settings.Force, BuildLibrary.PathOf(settings.Build), settings.Results);
        AssembledBuild build = BuildLibrary.Load(settings.Build, settings.Air);
        return settings.Results is string file ? Compare(settings, build, file) : Plan(settings, build);
    }

    private static int Plan(Settings settings, AssembledBuild build)
    {
        BenchPlan plan = BenchPlan.Of(build);
        if (settings.Worksheet is string sheet) TextFile.Write("--worksheet", sheet, BenchFiles.IsHtml(sheet) ? BenchWorksheet.Html(plan) : BenchWorksheet.Markdown(plan), settings.Force);
        if (settings.Template is string template) TextFile.Write("--template", template, BenchTemplate.Write(plan), settings.Force);
        if (settings.Json) BenchOutput.PrintJson(plan, settings.Worksheet, settings.Template);
        else BenchOutput.Print(plan, settings.Build, settings.Worksheet, settings.Template);
        return ExitCode.Ok;
    }

    private static int Compare(Settings settings, AssembledBuild build, string file)
    {
        BenchResult read = BenchReader.Read(file);
        if (read.Readings is null) throw new UserError(read.Diagnostics);
        foreach (Diagnostic warning in read.Diagnostics) Console.Error.WriteLine(warning);
        BenchReport report;
        try
        {
            report = BenchStudy.Run(build, read.Readings);
        }
        catch (FitException error)
        {
            throw new UserError(error.Diagnostics);
        }
        if (settings.Sheet is string sheet) TextFile.Write("--sheet", sheet, BenchFiles.IsHtml(sheet) ? BenchResultPage.Html(report) : BenchResultPage.Markdown(report), settings.Force);
        // a copy that cannot be written is no reason to keep the result back
        UserError? refused = settings.Out is null ? null : Copy(settings, report, settings.Out);
        string? written = refused is null ? settings.Out : null;
        if (settings.Json) BenchOutput.PrintJson(report, settings.Sheet, written);
        else BenchOutput.Print(report, settings.Sheet, written);
        return refused is null ? ExitCode.Ok : throw refused;
    }

    private static UserError? Copy(Settings settings, BenchReport report, string path)
    {
        try
        {
            return MeasuredCopy.Write(settings.Build, report.Build, path, settings.Force, report.Numbers());
        }
        catch (UserError error)
        {
            return error;
        }
    }
}
