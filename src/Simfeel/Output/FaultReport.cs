using Simfeel.Flight;
using Simfeel.Physics.Guards;

namespace Simfeel.CommandLine.Output;

/// <summary>Says that a flight was stopped because it broke an invariant, and keeps the step.</summary>
internal static class FaultReport
{
    /// <summary>Writes the step into a folder, or to standard error where that cannot be, and returns the exit code.</summary>
    public static int Write(FlightFaultException fault, bool json, string folder)
    {
        string? file = FaultFile.Write(fault, folder, out string problem);
        string kept = file is not null
            ? $"The step is in {file}; ./simfeel doctor --repro FILE flies it again. Please report it with that file."
            : $"{problem} The step follows; keep it in a file for ./simfeel doctor --repro FILE.";
        int code = ErrorReport.Write(new UserError($"{fault.Message} {kept}", ExitCode.Fault), json);
        if (file is null) Console.Error.WriteLine(fault.Record.ToText());
        return code;
    }

    /// <summary>Flies a step again and says what it breaks.</summary>
    public static Dictionary<string, object?> Repeat(string file)
    {
        StepRecord record;
        try
        {
            record = FaultFile.Read(file);
        }
        catch (FormatException error)
        {
            throw new UserError(error.Message);
        }
        (KernelStage stage, Invariant broken) = record.Fly();
        bool same = (stage, broken) == (record.Stage, record.Broken);
        return new()
        {
            ["craft"] = record.Craft,
            ["lane"] = record.Lane,
            ["step"] = record.Number,
            ["time_s"] = record.Time,
            ["stage_then"] = record.Stage.ToString(),
            ["broken_then"] = record.Broken.ToString(),
            ["stage_now"] = stage.ToString(),
            ["broken_now"] = stage == KernelStage.None ? "nothing" : broken.ToString(),
            ["same"] = same,
        };
    }
}
