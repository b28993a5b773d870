using Simfeel.Flight;
using Simfeel.Flight.Fields;
using Simfeel.Flight.Traces;

namespace Simfeel.CommandLine.Determinism;

/// <summary>A session over Gull Point with all that a pilot can do in it, flown, recorded and flown again from the recording.</summary>
internal static class SessionProof
{
    private const double Duration = 12;

    private static readonly StickScript Script = new(
        (0.0, new(0, 0, 0, 0), PilotSwitches.None),
        (0.2, new(0, 0, 0, 0), PilotSwitches.Armed),
        (0.5, new(0, 0, 0, 0.7), PilotSwitches.Armed),
        (1.5, new(0.3, -0.4, 0.1, 0.5), PilotSwitches.Armed | PilotSwitches.Shadow),
        (2.5, new(-0.2, 0.2, 0, 0.5), PilotSwitches.Armed | PilotSwitches.Shadow | PilotSwitches.SwapInPlace),
        (3.5, new(0, 0, 0, 0.5), PilotSwitches.Armed | PilotSwitches.Level),
        // down into the ground, then back to the start
        (5.0, new(0.9, 0, 0, 0), PilotSwitches.Armed),
        (8.0, new(0, 0, 0, 0), PilotSwitches.Restart),
        (8.2, new(0, 0, 0, 0), PilotSwitches.Armed),
        (8.5, new(0, -0.1, 0, 0.6), PilotSwitches.Armed | PilotSwitches.Level | PilotSwitches.Climb),
        (10.0, new(0, 0, 0, 0), PilotSwitches.SwapFromStart));

    /// <summary>The hash of the session as flown, and of its replay.</summary>
    public static (ulong Live, ulong Replayed) Fly(ContractFlights flights)
    {
        string file = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml"), text = File.ReadAllText(file);
        FieldMap map = FieldReader.Parse(text, file).Map ?? throw new UserError($"{file} is no field.", ExitCode.Environment);
        FlyableBuild a = flights.Builds[1], b = flights.Builds[2];
        FieldConditions conditions = new();
        TraceHeader header = TraceHeader.Of(a, b, flights.Profile, conditions) with { FieldName = Path.GetFileName(file), FieldText = text };
        string folder = Directory.CreateTempSubdirectory("simfeel-doctor").FullName, trace = Path.Combine(folder, "session.arrow");
        try
        {
            return (Record(trace), Replayed(trace));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        ulong Record(string path)
        {
            using FlightSession session = new(a.Unit, b.Unit, flights.Profile, conditions, map);
            using TraceRecorder recorder = TraceRecorder.Start(path, header);
            for (long n = 0; n < Duration / flights.Profile.StickPeriod; n++)
            {
                PilotInput input = Script.At(n, flights.Profile.StickPeriod);
                session.Fly(input);
                recorder.Add(input, session);
                // flown faster than a disk may write
                while (recorder.Recording && ((n + 1) * flights.Profile.StickPeriod) - recorder.Written > 2) Thread.Sleep(1);
            }
            recorder.Finish();
            return recorder.Trouble is string trouble ? throw new UserError(trouble, ExitCode.Environment) : session.Hash();
        }

        ulong Replayed(string path)
        {
            using TraceReader reader = TraceReader.Open(path);
            using Replay replay = new(reader);
            while (replay.Fly())
            {
            }
            return replay.Session.Hash();
        }
    }
}
