using System.Reflection;
using Simfeel.CommandLine.Commands;
using Spectre.Console.Cli;

namespace Simfeel.CommandLine;

/// <summary>Between reading a line and the verb's work: every option that takes a text was given one.</summary>
/// <param name="next">Called afterwards; null for nobody.</param>
internal sealed class ValueCheck(ICommandInterceptor? next) : ICommandInterceptor
{
    /// <inheritdoc/>
    /// <exception cref="UserError">An option has no value.</exception>
    public void Intercept(CommandContext context, CommandSettings settings)
    {
        if (Missing(settings) is string option) throw new UserError($"{option} needs a value.", ExitCode.Misuse);
        next?.Intercept(context, settings);
    }

    /// <summary>The first option that stands without its value, such as <c>--field</c>; null when there is none.</summary>
    public static string? Missing(CommandSettings settings)
    {
        foreach ((PropertyInfo property, CommandOptionAttribute option) in OptionsOf(settings.GetType()))
        {
            bool missing = property.GetValue(settings) switch
            {
                string text => text == OutputSettings.NoValue,
                string[] texts => texts.Contains(OutputSettings.NoValue),
                _ => false,
            };
            if (missing) return $"--{option.LongNames[0]}";
        }
        return null;
    }

    /// <summary>The options of a verb's settings, each with the property that holds its value.</summary>
    public static IEnumerable<(PropertyInfo Property, CommandOptionAttribute Option)> OptionsOf(Type settings) =>
        from property in settings.GetProperties()
        let option = property.GetCustomAttribute<CommandOptionAttribute>()
        where option is not null
        select (property, option);
}
