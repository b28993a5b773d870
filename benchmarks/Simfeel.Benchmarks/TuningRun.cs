using System.Diagnostics;
using System.Globalization;
using System.Text;
using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Air;
using Simfeel.Studies.Handling;

namespace Simfeel.Benchmarks;

/// <summary>
/// What every craft of a study costs beside its flights: to put its build together from a propeller's table that is known, to tune it,
/// and to read a handling sweep. Least of many, interleaved, on one thread.
/// </summary>
internal static class TuningRun
{
    /// <summary>Runs for a while and returns the Markdown report.</summary>
    public static string Report(double seconds)
    {
        BuildShelf shelf = new(Path.Combine(TwinBuild.RepositoryRoot(), "assets", "builds"));
        Build build = BuildReader.Read(shelf.PathOf("wagtail")!).Build!;
        AirState air = StandardAtmosphere.At(0);
        PilotProfile pilot = new();
        FlightUnit unit = FlightUnit.Of(BuildAssembler.Assemble(build, air));
        FlightLog log = DrillRunner.Fly(HandlingDrills.Chirp(HandlingAxis.Roll), TunedUnit.Matched(unit, air, pilot), pilot);
        (string What, Action Do)[] works =
        [
            ("assemble a build", () => FlightUnit.Of(BuildAssembler.Assemble(build, air))),
            ("tune it by the matched rule", () => TunedUnit.Matched(unit, air, pilot)),
            ("read a sweep", () => HandlingReading.Of(log, HandlingAxis.Roll)),
        ];
        double[] least = [.. works.Select(_ => double.PositiveInfinity)];
        Stopwatch clock = Stopwatch.StartNew();
        while (clock.Elapsed.TotalSeconds < seconds)
        {
            for (int n = 0; n < works.Length; n++)
            {
                // turns of equal length, so that a profile shows each alike
                for (long turn = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(turn).TotalMilliseconds < 50;)
                {
                    long start = Stopwatch.GetTimestamp();
                    works[n].Do();
                    least[n] = Math.Min(least[n], Stopwatch.GetElapsedTime(start).TotalMicroseconds);
                }
            }
        }
        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"# Before a build flies, on {Machine.CpuName}");
        text.AppendLine();
        text.AppendLine("| work | us, least of many |");
        text.AppendLine("| --- | ---: |");
        for (int n = 0; n < works.Length; n++) text.AppendLine(CultureInfo.InvariantCulture, $"| {works[n].What} | {least[n]:f0} |");
        return text.ToString();
    }
}
