using System.ComponentModel;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs about one build.</summary>
internal class OneBuildSettings : AirSettings
{
    [CommandArgument(0, "<BUILD>")]
    [Description("A build file, or the name of a starter build such as wagtail.")]
    public string Build { get; init; } = "";
}
