using System.ComponentModel;
using System.Reflection;
using Simfeel.Builds.Reading;
using Simfeel.CommandLine.Commands;

namespace Simfeel.CommandLine;

/// <summary>Says what is wrong with a line that the parser refused: the option's name, the nearest verb or option, and where help is.</summary>
/// <param name="verbs">Verbs by their words, such as <c>fit swing</c>, and the commands that do them.</param>
internal sealed class MisuseReport(IReadOnlyDictionary<string, Type> verbs)
{
    /// <summary>The error to tell.</summary>
    /// <param name="message">What the parser or a verb's own check says.</param>
    /// <param name="args">The command line.</param>
    public UserError Of(string message, string[] args)
    {
        string? verb = VerbOf(args);
        return new($"{Named(message, args, verb)} Try: ./simfeel {(verb is null ? "" : verb + " ")}--help", ExitCode.Misuse);
    }

    private string? VerbOf(string[] args) => args.Length > 1 && verbs.ContainsKey($"{args[0]} {args[1]}") ? $"{args[0]} {args[1]}"
        : args.Length > 0 && verbs.ContainsKey(args[0]) ? args[0]
        : null;

    private string Named(string message, string[] args, string? verb)
    {
        // the parser says which value it could not read but not of which option
        if (message.Contains($"'{OutputSettings.NoValue}'", StringComparison.Ordinal))
            return $"{args.LastOrDefault(arg => arg.StartsWith("--", StringComparison.Ordinal) && arg != "--json")} needs a value.";
        for (int n = 1; n < args.Length; n++)
        {
            if (args[n - 1].StartsWith("--", StringComparison.Ordinal) && message.StartsWith($"Failed to convert '{args[n]}'", StringComparison.Ordinal))
            {
                string kind = message.Contains("Int32", StringComparison.Ordinal) ? "whole number" : "number";
                string comma = SyntaxMessages.DecimalComma().IsMatch(args[n]) ? $" ({SyntaxMessages.CommaHint})" : "";
                return $"{args[n - 1]} is '{args[n]}'; it must be a {kind}{comma}.{Meaning(verb, args[n - 1])}";
            }
        }
        if (message.StartsWith("Unknown option", StringComparison.Ordinal) || message.StartsWith("Unknown command", StringComparison.Ordinal))
        {
            if (verb is null) return args.Length > 0 && message.Contains($"'{args[0]}'", StringComparison.Ordinal) ? message + NearestName.Hint(args[0], verbs.Keys) : message;
            string[] options = OptionsOf(verbs[verb]);
            // where a verb has verbs of its own the parser blames the first word instead of the option
            if (args.FirstOrDefault(arg => arg.StartsWith("--", StringComparison.Ordinal) && !options.Contains(NameOf(arg))) is string strange)
                return $"Unknown option '{NameOf(strange)}'.{NearestName.Hint(NameOf(strange), options)}";
            if (message.StartsWith("Unknown command", StringComparison.Ordinal)) return $"There is a word too many for {verb}.";
        }
        return message;
    }

    /// <summary>What a verb's help says of an option, with range and unit; empty where nothing is known of it.</summary>
    private string Meaning(string? verb, string option) =>
        verb is not null && ValueCheck.OptionsOf(SettingsOf(verbs[verb])).FirstOrDefault(one => one.Option.LongNames.Contains(option[2..])).Property is PropertyInfo property
            && property.GetCustomAttribute<DescriptionAttribute>() is DescriptionAttribute help
            ? $" {option}: {help.Description}"
            : "";

    private static string NameOf(string option) => option.Split('=', ':')[0];

    private static Type SettingsOf(Type command)
    {
        Type type = command;
        while (!type.IsGenericType) type = type.BaseType!;
        return type.GetGenericArguments()[0];
    }

    private static string[] OptionsOf(Type command) =>
        ["--help", .. ValueCheck.OptionsOf(SettingsOf(command)).SelectMany(one => one.Option.LongNames).Select(name => "--" + name)];
}
