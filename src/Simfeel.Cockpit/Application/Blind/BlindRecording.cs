using System.Globalization;
using Simfeel.Flight;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Application.Blind;

/// <summary>
/// A blind flight as its sticks. What was flown is written into no file and no header before the truth is told; then it is flown again,
/// which gives the same bits, and recorded.
/// </summary>
internal sealed class BlindRecording(int trial, int flight, FlyableBuild craft, double late)
{
    /// <summary>How far the flight may be ahead of its file, s.</summary>
    private const double Ahead = 5;

    /// <summary>Every input, in order.</summary>
    public List<PilotInput> Inputs { get; } = [];

    /// <summary>Flies it again and records it; null, or why there is no recording.</summary>
    /// <param name="file">Name of recordings; trial and flight are added to it.</param>
    /// <param name="app">Profile, field and conditions of the flights.</param>
    public string? Write(string file, CockpitApp app)
    {
        string path = Path.Combine(
            Path.GetDirectoryName(file) ?? "",
            string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(file)}-trial-{trial:00}-flight-{flight}{Path.GetExtension(file)}"));
        PilotProfile profile = app.Profile;
        TraceHeader header = TraceHeader.Of(craft, craft, profile, app.Conditions) with
        {
            FieldName = app.Map.Name,
            FieldText = app.FieldText,
            VideoDelay = (app.Settings.VideoDelay_ms / 1000) + late,
            Blind = true,
        };
        using FlightSession session = new(craft.Unit, craft.Unit, profile, app.Conditions, app.Map);
        using TraceRecorder recorder = TraceRecorder.Start(path, header);
        foreach (PilotInput input in Inputs)
        {
            session.Fly(input);
            recorder.Add(input, session);
            // a flight flown again is far ahead of the disk, and the room for what waits is small
            while (recorder.Recording && (session.Readings * profile.StickPeriod) - recorder.Written > Ahead) Thread.Sleep(1);
            if (!recorder.Recording) break;
        }
        recorder.Finish();
        return recorder.Trouble;
    }
}
