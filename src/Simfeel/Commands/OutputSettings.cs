using System.ComponentModel;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options that every verb has.</summary>
internal class OutputSettings : CommandSettings
{
    /// <summary>What the parser reads as the value of an option that was given none, since the bare command is a verb as well.</summary>
    public const string NoValue = "__default_command";

    [CommandOption("--json")]
    [Description("Print JSON for machines: SI units, named in the keys.")]
    public bool Json { get; init; }
}
