using Simfeel.Flight;
using Simfeel.Physics.Guards;

namespace Simfeel.Cockpit.Application;

/// <content>A flight that broke an invariant: it ends, its recording and the step are kept, and it is said.</content>
public sealed partial class CockpitApp
{
    private void StopFor(FlightFaultException fault)
    {
        string recording = Outing?.Stage.Recorder is { Trouble: null } recorder ? $" The recording up to there is in {recorder.Path}." : "";
        string? file = FaultFile.Write(fault, _options.PictureFolder, out string problem);
        string kept = file is null ? $" {problem}" : $" The step is in {file}; ./simfeel doctor --repro FILE flies it again.";
        Console.Error.WriteLine($"simfeel: {fault.Message}{recording}{kept}");
        if (file is null) Console.Error.WriteLine(fault.Record.ToText());
        // a blind session ends with it and says which build was which, so the message may name it
        if (Blind.IsOn) Blind.End();
        else LeaveField();
        Say("The flight was stopped", $"{fault.Message} This is an error of the program.{recording}{kept}");
    }
}
