using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Simfeel.Fuzz.Oracles;

/// <summary>Files to begin with: those that come with the program, read in place, and our own under <c>corpus</c>.</summary>
internal static partial class Corpus
{
    /// <summary>Files of the folders below the program, such as <c>builds</c> or <c>corpus/votes</c>; what is in folders of these is left out.</summary>
    public static IReadOnlyList<byte[]> Of(params string[] folders) => [.. folders.SelectMany(Files).Select(File.ReadAllBytes)];

    /// <summary>
    /// Inputs of a kind that once broke something: name and bytes. In a file that ends in <c>.run</c> <c>&lt;&lt;9*200&gt;&gt;</c> stands for 200 times the
    /// character of number 9.
    /// </summary>
    public static IReadOnlyList<(string Name, byte[] Input)> Cases(string kind) =>
    [
        .. Files($"corpus/broken/{kind.Replace(' ', '-')}").Select(path => (Path.GetFileName(path), path.EndsWith(".run", StringComparison.Ordinal)
            ? Encoding.UTF8.GetBytes(Run().Replace(File.ReadAllText(path), match => new string((char)Number(match.Groups[1]), Number(match.Groups[2]))))
            : File.ReadAllBytes(path))),
    ];

    private static int Number(Group digits) => int.Parse(digits.ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"<<([0-9]+)\*([0-9]+)>>")]
    private static partial Regex Run();

    /// <summary>Full path of a file that comes along.</summary>
    public static string PathOf(string name) => Path.Combine(AppContext.BaseDirectory, name);

    private static IEnumerable<string> Files(string folder)
    {
        string path = PathOf(folder);
        return File.Exists(path) ? [path] : Directory.Exists(path) ? Directory.GetFiles(path).Order(StringComparer.Ordinal) : [];
    }
}
