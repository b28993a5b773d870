using System.Diagnostics;
using System.Globalization;
using System.Text;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// What the drills cost, all in: controller, kernel, wakes and ground, contact, script, thumbs and log. Least of many interleaved
/// flights with memory that was used before, per craft.
/// </summary>
internal static class DrillRun
{
    private static readonly FieldConditions Field = new();
    private static readonly PilotProfile Pilot = new();

    /// <summary>Flies for a while and returns the Markdown report.</summary>
    public static string Report(double seconds)
    {
        RotorTable table = Specimen.Table();
        TunedUnit[] units = [.. Enumerable.Range(0, DrillBatch.Width).Select(lane => Specimen.Tuned(lane, table))];
        Drill[] drills = [.. DrillCatalogue.Scripted];
        double[,] least = new double[drills.Length, 3];
        for (int n = 0; n < least.Length; n++) least[n / 3, n % 3] = double.PositiveInfinity;
        LogBuffers buffers = new();
        Stopwatch all = Stopwatch.StartNew();
        while (all.Elapsed.TotalSeconds < seconds)
        {
            for (int d = 0; d < drills.Length; d++)
            {
                Drill drill = drills[d];
                Take(d, 0, units.Length, () => DrillBatch.Fly(drill, units, Pilot, 1, Field, buffers, double.PositiveInfinity));
                Take(d, 1, units.Length, () => DrillBatch.Fly(drill, units, Pilot, 1, Field, buffers));
                Take(d, 2, 1, () => DrillRunner.FlyLanes<Lane1>(drill, [units[0]], Pilot, 1, Field, buffers));
            }
        }

        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"# Drills on {Machine.CpuName}");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"Least of many flights, {Pilot.StepRate} steps and {1 / Pilot.StickPeriod:f0} rows a second. The specimen's tuned neighbours, {units.Length} side by side or one alone.");
        text.AppendLine();
        text.AppendLine("| drill | s | steps | rows | us per craft, states only | with loads | one alone, with loads | ns per craft-step, states only |");
        text.AppendLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        double length = 0, lean = 0, full = 0, alone = 0;
        for (int d = 0; d < drills.Length; d++)
        {
            Row(drills[d].Name, drills[d].Duration, least[d, 0], least[d, 1], least[d, 2]);
            length += drills[d].Duration;
            lean += least[d, 0];
            full += least[d, 1];
            alone += least[d, 2];
        }
        Row("all", length, lean, full, alone);
        return text.ToString();

        void Take(int drill, int kind, int craft, Action fly)
        {
            long start = Stopwatch.GetTimestamp();
            fly();
            least[drill, kind] = Math.Min(least[drill, kind], Stopwatch.GetElapsedTime(start).TotalMicroseconds / craft);
        }

        void Row(string name, double duration, double states, double loads, double one) => text.AppendLine(CultureInfo.InvariantCulture,
            $"| {name} | {duration:f1} | {duration * Pilot.StepRate:f0} | {duration / Pilot.StickPeriod:f0} | {states:f0} | {loads:f0} | {one:f0} | {1000 * states / (duration * Pilot.StepRate):f0} |");
    }
}
