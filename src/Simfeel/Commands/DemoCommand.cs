using Simfeel.CommandLine.Output;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine.Commands;

/// <summary>The bare command: Wagtail against Curlew over Gull Point.</summary>
internal sealed class DemoCommand : Command<OutputSettings>
{
    public override int Execute(CommandContext context, OutputSettings settings, CancellationToken cancellationToken)
    {
        CompareCommand.Settings demo = new() { A = "wagtail", B = "curlew", Json = settings.Json };
        if (settings.Json)
        {
            ComparisonOutput.PrintJson(CompareCommand.Compare(demo));
            return ExitCode.Ok;
        }
        Console.WriteLine("Gull Point, an afternoon without wind. Wagtail, a 5 inch craft on short arms, against Curlew, a 7 inch one on long arms:");
        Console.WriteLine();
        ComparisonOutput.PrintTable(CompareCommand.Compare(demo));
        Console.WriteLine();
        Console.WriteLine("Next: ./simfeel fly (both in the air), ./simfeel compare wagtail pipit, ./simfeel weigh wagtail, ./simfeel stand curlew, ./simfeel --help.");
        return ExitCode.Ok;
    }
}
