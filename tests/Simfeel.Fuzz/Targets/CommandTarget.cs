using System.Reflection;
using System.Text;
using Simfeel.CommandLine;
using Simfeel.CommandLine.Commands;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Running;
using Spectre.Console.Cli;

namespace Simfeel.Fuzz.Targets;

/// <summary>
/// Command lines, one word a line. They go through the program's own parser and its checks of values up to the point where the
/// verb would begin to work; a share of cheap verbs is let go on.
/// </summary>
internal sealed class CommandTarget : Target
{
    private static readonly string[] Cheap = ["weigh", "votes", "stand", "sweep-merge", "swing", "bench"];

    public override string Name => "command lines";

    public override int Weight => 60;

    public override string Ending => ".args";

    public override byte[] Make(Dice dice) => Encoding.UTF8.GetBytes(string.Join('\n', Words.Line(dice)));

    public override Verdict Try(byte[] input, Dice dice)
    {
        string[] args = Encoding.UTF8.GetString(input).Split('\n');
        bool deep = Deep(dice, 40);
        Gate gate = new(deep);
        string home = Environment.CurrentDirectory;
        // deep enough that ../../x stays inside
        string work = Directory.CreateDirectory(Path.Combine(Scratch.Folder, "a", "b", "c", "work")).FullName;
        (int code, string said, string complained) run;
        try
        {
            Environment.CurrentDirectory = work;
            run = Captured.Run(() => CommandLineApp.Run(args, gate));
        }
        catch (Gate.OpenException)
        {
            Check(gate.Settings!);
            return Verdict.Accepted;
        }
        finally
        {
            Environment.CurrentDirectory = home;
        }
        if (gate.Settings is not null) Check(gate.Settings);
        return Explained(run.code, run.said, run.complained, args);
    }

    /// <summary>Whether a run ended as promised: with an exit code of ours, and with a reason where that is not 0.</summary>
    public static Verdict Explained(int code, string said, string complained, string[] args)
    {
        if (code is < 0 or > 3) throw new UnexplainedException($"exit code {code}");
        if (code == 0) return Verdict.Accepted;
        string text = args.Contains("--json") ? said : complained;
        if (text.Trim().Length == 0) throw new UnexplainedException($"exit code {code} without a word");
        foreach (string line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Contains("   at ", StringComparison.Ordinal) || line.Contains("Exception", StringComparison.Ordinal) && !args.Any(arg => arg.Contains("Exception", StringComparison.Ordinal)))
                throw new UnexplainedException($"is not in our own words: {line}");
        }
        if (!Named(text, args)) throw new UnexplainedException($"names no place: {text.Trim()}");
        return Verdict.Rejected;
    }

    /// <summary>Whether a complaint names an option, an argument or a word of the line.</summary>
    private static bool Named(string text, string[] args) =>
        text.Contains("--", StringComparison.Ordinal) || text.Contains("argument", StringComparison.OrdinalIgnoreCase) || text.Contains("command", StringComparison.OrdinalIgnoreCase)
        || args.Any(arg => arg.Trim().Length > 0 && text.Contains(arg.Trim(), StringComparison.Ordinal)) || text.Contains(".toml", StringComparison.Ordinal) || text.Contains(".csv", StringComparison.Ordinal);

    /// <summary>No number of a line that was taken is anything but a number, and no text is the parser's word for a missing one.</summary>
    private static void Check(CommandSettings settings)
    {
        foreach (PropertyInfo property in settings.GetType().GetProperties().Where(property => property.GetCustomAttribute<CommandOptionAttribute>() is not null || property.GetCustomAttribute<CommandArgumentAttribute>() is not null))
        {
            object? value = property.GetValue(settings);
            if (value is double number && !double.IsFinite(number)) throw new UnexplainedException($"{property.Name} is {number}");
            if (value is string text && text == OutputSettings.NoValue) throw new UnexplainedException($"{property.Name} was given without a value");
        }
    }

    /// <summary>Stands where a verb begins to work.</summary>
    private sealed class Gate(bool deep) : ICommandInterceptor
    {
        public CommandSettings? Settings { get; private set; }

        public void Intercept(CommandContext context, CommandSettings settings)
        {
            Settings = settings;
            if (!deep || !Cheap.Contains(context.Name)) throw new OpenException();
        }

        /// <summary>The line was taken; the verb is not begun.</summary>
        public sealed class OpenException : Exception;
    }
}
