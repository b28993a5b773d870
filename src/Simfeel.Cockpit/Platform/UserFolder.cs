using System.Globalization;
using System.Text;
using Simfeel.Builds.Writing;

namespace Simfeel.Cockpit.Platform;

/// <summary>
/// Where settings live, and where pictures, traces and videos go. Nothing here throws at its caller: what cannot be read
/// or stored is said in one sentence, and the flight goes on.
/// </summary>
/// <param name="path">The folder of the settings; made at the first write.</param>
public sealed class UserFolder(string path)
{
    /// <summary>Environment variable with the folder of the settings.</summary>
    public const string ConfigVariable = "SIMFEEL_CONFIG";

    /// <summary>Environment variable with the folder for pictures, traces and videos.</summary>
    public const string OutputVariable = "SIMFEEL_OUTPUT";

    // settings and stick profiles are a few kilobytes; anything this long is another file
    private const int MaxLength = 1 << 20;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The folder of the settings.</summary>
    public string Path => path;

    /// <summary>
    /// The folder of this user: <see cref="ConfigVariable"/>, else <c>%APPDATA%\simfeel</c> on Windows,
    /// <c>~/Library/Application Support/simfeel</c> on macOS, and elsewhere <c>$XDG_CONFIG_HOME/simfeel</c> or
    /// <c>~/.config/simfeel</c> (XDG Base Directory Specification, which ignores relative paths).
    /// </summary>
    public static UserFolder OfUser() => new(ConfigPath(Environment.GetEnvironmentVariable, Systems.This));

    /// <summary>
    /// The folder for what a flight leaves behind: <see cref="OutputVariable"/>, else <c>simfeel</c> in the home folder,
    /// else the current folder. A folder that a pilot sees, since pictures and videos are for showing.
    /// </summary>
    public static string Output => OutputPath(Environment.GetEnvironmentVariable, Systems.This);

    /// <summary>
    /// A file name in a folder that is not taken yet, such as <c>picture-20261125-131502.png</c>; the folder is made.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="kind">First part of the name.</param>
    /// <param name="extension">Ending, with its dot.</param>
    /// <param name="time">Second part of the name.</param>
    /// <param name="file">The whole path.</param>
    /// <param name="problem">What is wrong; empty where nothing is.</param>
    public static bool TryNewFile(string folder, string kind, string extension, DateTime time, out string file, out string problem)
    {
        string stem = System.IO.Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{kind}-{time:yyyyMMdd-HHmmss}"));
        file = stem + extension;
        try
        {
            Directory.CreateDirectory(folder);
            for (int n = 2; System.IO.Path.Exists(file); n++) file = string.Create(CultureInfo.InvariantCulture, $"{stem}-{n}{extension}");
            problem = "";
            return true;
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            problem = $"Nothing can be stored in {folder}: {Reason(e)}. Set {OutputVariable} to another folder.";
            return false;
        }
    }

    /// <summary>Reads a file of the folder; no such file is no problem, but gives false.</summary>
    /// <param name="name">Its name below the folder, parts joined by <c>/</c>.</param>
    /// <param name="text">What it holds; empty where there is none.</param>
    /// <param name="problem">What is wrong, in one sentence; empty where nothing is.</param>
    public bool TryRead(string name, out string text, out string problem)
    {
        string file = FileOf(name);
        text = problem = "";
        try
        {
            if (!File.Exists(file) && !Directory.Exists(file)) return false;
            if (new FileInfo(file).Length > MaxLength)
            {
                problem = $"{file} is longer than 1 MiB, so it is none of ours. Defaults are used.";
                return false;
            }
            text = TextOf(file);
            return true;
        }
        catch (DecoderFallbackException)
        {
            problem = $"{file} is no UTF-8 text. Defaults are used.";
            return false;
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            problem = $"{file} cannot be read: {Reason(e)}. Defaults are used.";
            return false;
        }
    }

    /// <summary>The text of a file in UTF-8.</summary>
    /// <exception cref="DecoderFallbackException">It is none.</exception>
    internal static string TextOf(string file)
    {
        ReadOnlySpan<byte> bytes = File.ReadAllBytes(file);
        if (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        return Strict.GetString(bytes);
    }

    /// <summary>
    /// Stores a file of the folder whole or not at all, so that a full disk or a lost supply leaves the old one.
    /// </summary>
    /// <param name="name">Its name below the folder, parts joined by <c>/</c>.</param>
    /// <param name="text">What it shall hold.</param>
    /// <param name="problem">What is wrong, in one sentence; empty where nothing is.</param>
    public bool TryWrite(string name, string text, out string problem)
    {
        string file = FileOf(name);
        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
            WholeFile.Write(file, text);
            problem = "";
            return true;
        }
        catch (Exception e) when (OfTheDisk(e))
        {
            problem = $"{file} cannot be stored: {Reason(e)}. What you set holds until the program ends.";
            return false;
        }
    }

    /// <summary>The systems that differ in where settings go.</summary>
    internal enum Systems
    {
        Linux,
        Windows,
        Mac,
        This,
    }

    internal static string ConfigPath(Func<string, string?> environment, Systems system)
    {
        if (environment(ConfigVariable) is { Length: > 0 } asked) return System.IO.Path.GetFullPath(asked);
        string home = Home(environment, system);
        switch (Known(system))
        {
            case Systems.Windows:
                return System.IO.Path.Combine(environment("APPDATA") ?? home, "simfeel");
            case Systems.Mac:
                return System.IO.Path.Combine(home, "Library", "Application Support", "simfeel");
            default:
                string? config = environment("XDG_CONFIG_HOME");
                return System.IO.Path.Combine(System.IO.Path.IsPathRooted(config) ? config! : System.IO.Path.Combine(home, ".config"), "simfeel");
        }
    }

    internal static string OutputPath(Func<string, string?> environment, Systems system)
    {
        if (environment(OutputVariable) is { Length: > 0 } asked) return System.IO.Path.GetFullPath(asked);
        string home = Home(environment, system);
        return home == "." ? System.IO.Path.GetFullPath(home) : System.IO.Path.Combine(home, "simfeel");
    }

    private static Systems Known(Systems system) =>
        system != Systems.This ? system
        : OperatingSystem.IsWindows() ? Systems.Windows
        : OperatingSystem.IsMacOS() ? Systems.Mac
        : Systems.Linux;

    private static string Home(Func<string, string?> environment, Systems system) =>
        environment(Known(system) == Systems.Windows ? "USERPROFILE" : "HOME") is { Length: > 0 } home ? home : ".";

    private string FileOf(string name) => System.IO.Path.Combine(path, System.IO.Path.Combine(name.Split('/')));

    private static string Reason(Exception e) => e.Message.TrimEnd('.').ReplaceLineEndings(" ");

    private static bool OfTheDisk(Exception e) => e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException;
}
