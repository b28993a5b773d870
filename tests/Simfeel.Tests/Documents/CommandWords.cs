namespace Simfeel.Tests.Documents;

/// <summary>A command line of a document, without what is said behind it.</summary>
internal static class CommandWords
{
    /// <summary>How a document starts the program.</summary>
    public const string Launcher = "./simfeel";

    /// <summary>The words; a comment begins with two blanks.</summary>
    public static string[] Of(string line) => line.Split("  ")[0].Split(' ', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Whether the line starts the program, variables of the environment set in front of it or not.</summary>
    public static bool Starts(string line) => WithoutVariables(Of(line)).FirstOrDefault() == Launcher;

    /// <summary>What the program is handed.</summary>
    public static string[] Arguments(string line) => [.. WithoutVariables(Of(line)).Skip(1)];

    private static IEnumerable<string> WithoutVariables(IEnumerable<string> words) =>
        words.SkipWhile(word => word.Contains('=', StringComparison.Ordinal) && char.IsAsciiLetterUpper(word[0]));
}
