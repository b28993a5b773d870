using System.Globalization;
using Simfeel.Builds.Writing;
using Simfeel.Physics.Guards;

namespace Simfeel.Flight;

/// <summary>Puts the step of a fault where people find it.</summary>
public static class FaultFile
{
    /// <summary>Longest text of a step, characters; four times what eight rotors need.</summary>
    public const int MostCharacters = 1 << 20;

    /// <summary>
    /// Writes the step into a folder, beside and renamed; the same fault has the same name. Tells no build's name, which blind
    /// flights keep back.
    /// </summary>
    /// <param name="fault">The fault.</param>
    /// <param name="folder">The folder; made where it is missing.</param>
    /// <param name="problem">Why it could not be written; empty where it was.</param>
    /// <returns>The file; null where it could not be written.</returns>
    public static string? Write(FlightFaultException fault, string folder, out string problem)
    {
        ArgumentNullException.ThrowIfNull(fault);
        StepRecord record = fault.Record;
        string name = string.Create(CultureInfo.InvariantCulture, $"simfeel-fault-{record.Stage}-{record.Number}-{record.Lane}.txt").ToLowerInvariant();
        string path = Path.Combine(Path.GetFullPath(folder), name);
        try
        {
            Directory.CreateDirectory(folder);
            WholeFile.Write(path, record.ToText());
            problem = "";
            return path;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problem = $"{path} cannot be written: {error.Message}";
            return null;
        }
    }

    /// <summary>Reads a step back.</summary>
    /// <exception cref="FormatException">The file cannot be read or is no such file; the message names it.</exception>
    public static StepRecord Read(string path)
    {
        try
        {
            FileInfo file = new(path);
            if (file.Exists && file.Length > MostCharacters) throw new FormatException($"It has {file.Length} bytes; the largest has {MostCharacters}.");
            return StepRecord.Parse(File.ReadAllText(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or FormatException)
        {
            throw new FormatException($"{path}: {error.Message}", error);
        }
    }

    /// <summary>The fault behind an exception, which work on several threads may have wrapped; null where it is none.</summary>
    public static FlightFaultException? In(Exception? error) => error switch
    {
        null => null,
        FlightFaultException fault => fault,
        AggregateException many => many.Flatten().InnerExceptions.OfType<FlightFaultException>().FirstOrDefault(),
        _ => In(error.InnerException),
    };
}
