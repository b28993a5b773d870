using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Trim;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests;

/// <summary>
/// The starter builds in flight, inside the bands that a practitioner would recognise for their class (common practice, and
/// a prototype's numbers; not measurements). Mass, inertia, thrust and current are held in the tests of the builds.
/// </summary>
public class StarterBandTests
{
    private sealed record Band(
        (double, double) Fall_m, (double, double) Settled_m_s, (double, double) Stop_ms, (double, double) Hover_min,
        (double, double) Roll_kdeg_s2, (double, double) Yaw_kdeg_s2, (double, double) Top_km_h);

    private static readonly Dictionary<string, Band> Bands = new()
    {
        ["65 mm"] = new((3.8, 4.6), (8, 14), (28, 55), (3, 6), (50, 110), (20, 50), (25, 65)),
        ["3 in"] = new((4.1, 4.7), (12, 21), (32, 60), (5, 11), (80, 160), (18, 45), (70, 150)),
        ["5 in"] = new((4.1, 4.7), (15, 22), (38, 80), (7, 12), (50, 130), (12, 30), (130, 195)),
        ["6 in"] = new((4.0, 4.6), (14, 20), (46, 100), (8, 14.5), (40, 110), (9, 25), (120, 180)),
        ["7 in"] = new((4.0, 4.6), (13, 22), (55, 115), (10, 21), (30, 80), (6, 18), (105, 165)),
        ["10 in"] = new((3.9, 4.7), (12, 22), (80, 190), (14, 30), (12, 45), (3, 10), (80, 145)),
    };

    public static TheoryData<string, string> Builds => new()
    {
        { "sanderling", "65 mm" }, { "dunlin", "65 mm" }, { "knot", "3 in" }, { "turnstone", "3 in" }, { "kittiwake", "3 in" },
        { "wagtail", "5 in" }, { "wagtail-swept", "5 in" }, { "pipit", "5 in" }, { "avocet", "5 in" },
        { "redshank", "6 in" }, { "greenshank", "6 in" }, { "curlew", "7 in" }, { "godwit", "7 in" },
        { "gannet", "10 in" }, { "fulmar", "10 in" },
    };

    [Theory]
    [MemberData(nameof(Builds))]
    public void Flies_inside_the_bands_of_its_class(string name, string size)
    {
        TunedUnit unit = Starters.Get(name);
        Band band = Bands[size];
        Within(band.Fall_m, Read("fall_in_1_s", DrillCatalogue.Drop));
        Within(band.Settled_m_s, Read("settled_fall_speed", DrillCatalogue.Drop));
        Within(band.Stop_ms, 1000 * Read("stop_time", DrillCatalogue.Stop));
        Within(band.Hover_min, Read("hover_endurance", DrillCatalogue.Hover) / 60);
        const double toKilodegrees = 180 / Math.PI / 1000;
        Within(band.Roll_kdeg_s2, toKilodegrees * Peak(unit, rotor => rotor.p_BcmR_B.Y < 0, sample => sample.AngularAcceleration_B.X));
        Within(band.Yaw_kdeg_s2, toKilodegrees * Peak(unit, rotor => rotor.Spin < 0, sample => sample.AngularAcceleration_B.Z));
        Craft craft = unit.Unit.Craft;
        Within(band.Top_km_h, 3.6 * LevelFlight.Top(craft, unit.Density, unit.Gravity, Starters.Profile.StateOfCharge).Speed);

        double Read(string metric, Drill drill) =>
            MetricCatalogue.All.Single(m => m.Name == metric).Read(DrillRunner.Fly(drill, unit, Starters.Profile));

        static void Within((double Low, double High) band, double value) => Assert.InRange(value, band.Low, band.High);
    }

    /// <summary>Largest acceleration when, from hover, some rotors go to full duty and the others to idle at once.</summary>
    private static double Peak(TunedUnit unit, Func<RotorConstants, bool> full, Func<Sample, double> signal)
    {
        Craft craft = unit.Unit.Craft;
        using CraftBatch<Lane1> batch = new(craft.Rotors.Count);
        batch.SetCraft(0, craft);
        batch.SetField(0, unit.Density, unit.Gravity);
        batch.SetState(0, unit.Hover.State);
        for (int k = 0; k < craft.Rotors.Count; k++) batch.SetCommand(0, k, full(craft.Rotors[k]) ? 1 : unit.Unit.IdleDuty);
        double peak = 0;
        for (int step = 0; step < 800; step++)
        {
            batch.Step(Integrator.Midpoint, 1 / 8000.0);
            batch.Evaluate();
            peak = Math.Max(peak, signal(batch.GetSample(0)));
        }
        return peak;
    }
}
