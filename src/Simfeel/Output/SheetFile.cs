using Simfeel.Studies.Sheet;

namespace Simfeel.CommandLine.Output;

/// <summary>A feel sheet as a file; its ending says of which kind.</summary>
internal static class SheetFile
{
    private static readonly Dictionary<string, Func<FeelSheet, string>> Kinds = new(StringComparer.OrdinalIgnoreCase)
    {
        [".html"] = FeelSheetHtml.Write,
        [".md"] = FeelSheetMarkdown.Write,
        [".json"] = sheet => JsonOutput.Text(FeelSheetJson.Of(sheet)) + "\n",
    };

    /// <summary>How to write a file of a name; null where the ending is none of ours.</summary>
    public static Func<FeelSheet, string>? KindOf(string path) => Kinds.GetValueOrDefault(Path.GetExtension(path));

    /// <summary>Says so at once where the folder is missing, not after a minute's work.</summary>
    /// <exception cref="UserError">There is no such folder.</exception>
    public static void CheckFolder(string path) => TextFile.CheckFolder("--sheet", path);

    /// <summary>Writes beside the file and renames, so that a good file is never half overwritten.</summary>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public static void Write(string path, FeelSheet sheet) => TextFile.Write("--sheet", path, KindOf(path)!(sheet));
}
