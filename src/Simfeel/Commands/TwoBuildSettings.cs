using System.ComponentModel;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>Options of verbs that fly drills with two builds.</summary>
internal class TwoBuildSettings : StudySettings
{
    [CommandArgument(0, "<A>")]
    [Description("A build file, or the name of a starter build such as wagtail.")]
    public string A { get; init; } = "";

    [CommandArgument(1, "<B>")]
    [Description("The build to compare it with.")]
    public string B { get; init; } = "";
}
