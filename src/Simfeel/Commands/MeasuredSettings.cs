using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs that write measured numbers into a copy of a build.</summary>
internal class MeasuredSettings : AirSettings
{
    [CommandOption("--build <BUILD>")]
    [Description("The build that was measured: a file, or the name of a starter build. Required.")]
    public string Build { get; init; } = "";

    [CommandOption("--out <FILE>")]
    [Description("Where the copy of the build goes. Default: <build>-measured.toml in the current folder.")]
    public string? Out { get; init; }

    [CommandOption("--force")]
    [Description("Replace that file if it is there already.")]
    public bool Force { get; init; }

    [CommandOption("--no-write")]
    [Description("Show the result and write nothing.")]
    public bool NoWrite { get; init; }

    public override ValidationResult Validate() =>
        Build.Length == 0 ? ValidationResult.Error("--build is missing: say which build was measured.") : base.Validate();
}
