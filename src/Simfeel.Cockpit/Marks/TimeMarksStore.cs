using System.Text;
using Simfeel.Builds.Writing;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Marks;

/// <summary>
/// The marks of one recording with the file beside it. A file that could not be read in full is kept as <c>.old</c> before
/// the first change is stored, so that nothing in it is lost.
/// </summary>
/// <param name="trace">The recording's file.</param>
internal sealed class TimeMarksStore(string trace)
{
    // some ten thousand marks; anything this long is another file
    private const int MaxLength = 1 << 20;

    private bool _keepOld;

    /// <summary>The recording.</summary>
    public string Trace { get; private set; } = trace;

    /// <summary>File of the marks.</summary>
    public string Path => TimeMarksFile.PathFor(System.IO.Path.GetFullPath(Trace));

    /// <summary>The marks.</summary>
    public TimeMarks Marks { get; private set; } = new();

    /// <summary>Reads the file where there is one.</summary>
    /// <param name="wrong">Receives one sentence for each mistake.</param>
    public void Load(ICollection<string> wrong)
    {
        int before = wrong.Count;
        try
        {
            if (!File.Exists(Path)) return;
            string name = System.IO.Path.GetFileName(Path);
            if (new FileInfo(Path).Length > MaxLength) wrong.Add($"{name} is longer than 1 MiB, so it holds no time marks. No mark is read.");
            else Marks = TimeMarksFile.Read(UserFolder.TextOf(Path), name, wrong);
        }
        catch (DecoderFallbackException)
        {
            wrong.Add($"{Path} is no UTF-8 text. No mark is read.");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            wrong.Add($"{Path} cannot be read: {error.Message.TrimEnd('.')}. No mark is read.");
        }
        _keepOld = wrong.Count > before;
    }

    /// <summary>A new recording takes the place of an older one, whose marks do not belong to it and are put aside.</summary>
    /// <param name="wrong">Receives a sentence where that cannot be done.</param>
    public void Begin(ICollection<string> wrong)
    {
        try
        {
            if (File.Exists(Path)) File.Move(Path, Path + ".old", overwrite: true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            wrong.Add($"{Path} belongs to an older recording and cannot be put aside: {error.Message.TrimEnd('.')}.");
        }
    }

    /// <summary>The recording has another name now, since it took the place of an older one; its marks follow it.</summary>
    /// <param name="trace">The recording's file.</param>
    /// <param name="wrong">Receives a sentence where that cannot be done.</param>
    public void MoveTo(string trace, ICollection<string> wrong)
    {
        if (trace == Trace) return;
        string from = Path;
        Trace = trace;
        Begin(wrong);
        try
        {
            if (File.Exists(from)) File.Move(from, Path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            wrong.Add($"The marks stay in {from}: {error.Message.TrimEnd('.')}.");
        }
    }

    /// <summary>Stores the marks whole or not at all.</summary>
    /// <param name="problem">What is wrong, in one sentence; empty where nothing is.</param>
    public bool TrySave(out string problem)
    {
        try
        {
            if (_keepOld) WholeFile.Write(Path + ".old", old => old.Write(File.ReadAllBytes(Path)));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            problem = $"{Path} had mistakes, and a copy of it cannot be kept: {error.Message.TrimEnd('.')}. Marks hold until the program ends.";
            return false;
        }
        if (!new UserFolder(System.IO.Path.GetDirectoryName(Path)!).TryWrite(System.IO.Path.GetFileName(Path), TimeMarksFile.Write(Marks), out problem)) return false;
        _keepOld = false;
        return true;
    }
}
