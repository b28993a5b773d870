using Simfeel.Builds.Format;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Reading;

/// <summary>A polar as a build file gave it: its numbers, the name of the file that holds them and that file's text.</summary>
internal sealed record GivenPolar(TabulatedPolar Polar, string File, string Text, Place? At);

/// <summary>Finds the file of a section polar that a build file names. It must lie beside the build file or below it.</summary>
internal static class PolarFile
{
    /// <summary>The polar, or null with a diagnostic of the build file or of the polar's own.</summary>
    /// <param name="key">Key that names the file.</param>
    /// <param name="spec">The key.</param>
    /// <param name="name">The name as written.</param>
    /// <param name="at">Where it is written.</param>
    /// <param name="folder">Folder of the build file; null where the build is text without a file.</param>
    /// <param name="kept">Text of the polar file where it was kept with the build's; null to read the file.</param>
    /// <param name="bag">Receives what is wrong.</param>
    public static GivenPolar? Read(string key, KeySpec spec, string name, Place at, string? folder, string? kept, DiagnosticBag bag)
    {
        if (Fault(name) is string fault)
        {
            bag.Error(at, key, $"\"{name}\"", $"{fault} Allowed is a {spec.Range}.", "put the file beside the build file and write its name alone");
            return null;
        }
        if (kept is not null) return Parse(name, at, kept, new(name), bag);
        if (folder is null)
        {
            bag.Error(at, key, $"\"{name}\"", $"This build was not read from a file, so nothing lies beside it; allowed is a {spec.Range}.");
            return null;
        }
        string path = Path.Combine(folder, name);
        if (Directory.Exists(path))
        {
            bag.Error(at, key, $"\"{name}\"", $"This is a folder; allowed is a {spec.Range}.", "name the file in it");
            return null;
        }
        if (!File.Exists(path))
        {
            bag.Error(at, key, $"\"{name}\"", $"There is no such file; allowed is a {spec.Range}.", "check the name");
            return null;
        }
        if (Linked(folder, name))
        {
            bag.Error(at, key, $"\"{name}\"", $"This is a link, which may lead anywhere; allowed is a {spec.Range}.", "copy the file itself there");
            return null;
        }
        // findings name the polar as the build is named: from the current folder, or in full
        DiagnosticBag own = new(Path.IsPathFullyQualified(bag.SourceName) ? path : Path.GetRelativePath(".", path));
        string? text = SourceText.ReadFile(path, own, "polar file");
        return Parse(name, at, text, own, bag);
    }

    private static GivenPolar? Parse(string name, Place at, string? text, DiagnosticBag own, DiagnosticBag bag)
    {
        TabulatedPolar? polar = text is null ? null : PolarReader.Read(text, own);
        bag.Adopt(own);
        return polar is null ? null : new(polar, name, text!, at);
    }

    private static string? Fault(string name)
    {
        if (string.IsNullOrWhiteSpace(name) || name.Split('/')[^1] is "" or ".") return "This names no file.";
        if (name.Any(char.IsControl)) return "A file's name has no control characters.";
        if (name.Contains('\\', StringComparison.Ordinal)) return "Folders are parted by /, not by \\.";
        if (Path.IsPathRooted(name) || name.Contains(':', StringComparison.Ordinal)) return "The file's place counts from the build file's folder.";
        return name.Split('/').Contains("..") ? "The path leads out of the build file's folder." : null;
    }

    /// <summary>Whether the file, or a folder between the build's and its own, is a symbolic link.</summary>
    private static bool Linked(string folder, string name)
    {
        string path = folder;
        foreach (string part in name.Split('/'))
        {
            path = Path.Combine(path, part);
            if (new FileInfo(path).LinkTarget is not null) return true;
        }
        return false;
    }
}
