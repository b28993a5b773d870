using Simfeel.CommandLine.Determinism;

namespace Simfeel.CommandLine.Output;

/// <summary>The determinism contract for people and for machines.</summary>
internal static class DeterminismOutput
{
    /// <summary>What stands for <see cref="ReferenceFile"/> on the command line.</summary>
    private const string ReferenceWord = "reference";

    private static string ReferenceFile => Path.Combine(AppContext.BaseDirectory, ReferenceWord, "bits.txt");

    /// <summary>Prints the hashes and a verdict.</summary>
    /// <param name="json">For machines.</param>
    /// <param name="brief">One lane only, <see cref="ContractHashes.Make"/>.</param>
    /// <returns>0; <see cref="ExitCode.Environment"/> where this machine breaks the contract within itself.</returns>
    public static int PrintHashes(bool json, bool brief)
    {
        Dictionary<string, string> hashes = ContractHashes.Make(ContractFlights.Load(), brief), reference = ReferenceHashes();
        bool agree = ContractHashes.Agree(hashes);
        string[] strange = [.. hashes.Where(hash => reference.GetValueOrDefault(hash.Key) != hash.Value).Select(hash => hash.Key)];
        if (json)
        {
            Dictionary<string, object?> report = hashes.ToDictionary(hash => hash.Key, hash => (object?)hash.Value);
            report["agree"] = agree;
            report["same_as_reference"] = strange.Length == 0;
            JsonOutput.Print(report);
        }
        else
        {
            foreach ((string name, string hash) in hashes) Console.WriteLine($"{name.Replace('_', ' '),-34} {hash}");
            Console.WriteLine(agree
                ? "All ways to fly agree: lane widths, threads, order, replay."
                : "Ways to fly differ on this machine, which breaks the contract: please report it with ./simfeel doctor --bits FILE.");
            Console.WriteLine(strange.Length == 0
                ? "They are the bits of the reference that came with this version."
                : $"Not the reference's: {string.Join(", ", strange.Select(name => name.Replace('_', ' ')))}. ./simfeel doctor --bits-against reference says where they part.");
        }
        return agree ? ExitCode.Ok : ExitCode.Environment;
    }

    /// <summary>Writes the bit-log.</summary>
    public static int WriteBits(string path, bool json)
    {
        TextFile.CheckFolder("--bits", path);
        TextFile.Write("--bits", path, BitLog.Write());
        if (json) JsonOutput.Print(new() { ["bits"] = path });
        else Console.WriteLine($"The bits stand in {path}.");
        return ExitCode.Ok;
    }

    /// <summary>Compares this machine's bits with a file's.</summary>
    /// <returns>0 where all are the same, else <see cref="ExitCode.BadInput"/>.</returns>
    public static int CompareBits(string path, bool json)
    {
        string file = path == ReferenceWord ? ReferenceFile : path;
        BitLogComparison result;
        try
        {
            result = BitLogComparison.Of(BitLog.Write(), File.ReadAllText(file));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserError($"--bits-against: {file} cannot be read: {error.Message}");
        }
        catch (FormatException error)
        {
            throw new UserError($"--bits-against: {file} is no bit-log: {error.Message}.");
        }
        if (json) JsonOutput.Print(new() { ["lines"] = result.Lines, ["different"] = result.Different, ["first"] = result.First });
        else
        {
            Console.WriteLine(result.Different == 0
                ? $"All {result.Lines} lines are the same, bit for bit."
                : $"{result.Different} of {result.Lines} lines differ. {result.First}");
        }
        return result.Different == 0 ? ExitCode.Ok : ExitCode.BadInput;
    }

    /// <summary>The hashes in the log that came with the program, by name; none where it is missing.</summary>
    private static Dictionary<string, string> ReferenceHashes() =>
        !File.Exists(ReferenceFile)
            ? []
            : File.ReadLines(ReferenceFile)
                .Select(line => line.Split(' '))
                .Where(words => words is ["hash", _, _])
                .ToDictionary(words => words[1], words => words[2]);
}
