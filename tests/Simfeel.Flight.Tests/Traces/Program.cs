using System.Globalization;
using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>
/// Started directly (dotnet exec Simfeel.Flight.Tests.dll SECONDS FILE...) the assembly records a flight of some seconds into each
/// file at once, as fast as it can, and says "recording" when all have begun; the test host does not use this. At the end it says
/// for each file what ended the recording and how long the flight went on. Ends with 0 where all was written, else with 1.
/// With one FILE alone it flies that recording again and ends with 0 where it is whole and every row comes out bit for bit.
/// </summary>
internal static class Program
{
    /// <summary>How far a flight may be ahead of its file, s.</summary>
    private const double Ahead = 5;

    private static int Main(string[] args)
    {
        if (args.Length == 0) return 2;
        if (args.Length == 1) return Check(args[0]);
        long readings = (long)(double.Parse(args[0], CultureInfo.InvariantCulture) / Starters.Profile.StickPeriod);
        FlightSession[] sessions = [.. args.Skip(1).Select(_ => Flights.NewSession())];
        TraceRecorder[] recorders = [.. args.Skip(1).Select(file => TraceRecorder.Start(file, Flights.Header))];
        // each flies some readings behind the one before, so that their batches end at different moments
        const long lag = 73;
        for (long n = 0; n < readings + (lag * sessions.Length); n++)
        {
            for (int k = 0; k < sessions.Length; k++)
            {
                long reading = n - (lag * k);
                if (reading < 0 || reading >= readings) continue;
                PilotInput input = Flights.Input(reading);
                sessions[k].Fly(input);
                recorders[k].Add(input, sessions[k]);
                // far faster than real time, but no faster than the disk: the ring must not overflow
                while (recorders[k].Recording && (sessions[k].Readings * Starters.Profile.StickPeriod) - recorders[k].Written > Ahead)
                    Thread.Sleep(1);
            }
            if (n == lag * sessions.Length) Console.WriteLine("recording");
        }
        for (int k = 0; k < sessions.Length; k++)
        {
            recorders[k].Finish();
            Console.WriteLine($"{sessions[k].Readings} readings flown: {recorders[k].Trouble ?? "written"}");
        }
        return recorders.Any(recorder => recorder.Trouble is not null) ? 1 : 0;
    }

    private static int Check(string file)
    {
        using TraceReader trace = TraceReader.Open(file);
        ReplayResult again = Replay.Run(trace);
        Console.WriteLine($"{again.Rows} rows, {(again.Same ? "flown again bit for bit" : "the flight differs")}{(again.CutShort ? ", cut short" : "")}");
        return again is { Same: true, CutShort: false } ? 0 : 1;
    }
}
