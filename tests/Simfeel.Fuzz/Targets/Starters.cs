using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Physics.Air;

namespace Simfeel.Fuzz.Targets;

/// <summary>A starter build and flights with what was taken.</summary>
internal static class Starters
{
    /// <summary>Air at sea level.</summary>
    public static readonly AirState Air = StandardAtmosphere.At(0);

    /// <summary>The usual pilot.</summary>
    public static readonly PilotProfile Profile = new();

    private static readonly Lazy<AssembledBuild> Known = new(() => BuildAssembler.Assemble(BuildReader.Read(Corpus.PathOf("builds/wagtail.toml")).Build!, Air));

    private static readonly Lazy<FlyableBuild> Ready = new(() => FlyableBuild.Read(Corpus.PathOf("builds/wagtail.toml"), Air, Profile).Build!);

    /// <summary>A build that is put together once.</summary>
    public static AssembledBuild Wagtail => Known.Value;

    /// <summary>The same, tuned.</summary>
    public static FlyableBuild Flyable => Ready.Value;

    /// <summary>Flies a craft for 0.2 s with hard sticks and looks at its state.</summary>
    public static void Fly(TunedUnit unit, Dice dice, Flight.Fields.FieldMap? map = null)
    {
        using FlightSession session = new(unit, unit, Profile, new(), map);
        for (int n = 0; n < 200; n++)
        {
            double stick = dice.Share();
            session.Fly(PilotInput.Of(new(2 * stick - 1, 1 - 2 * stick, stick, stick), PilotSwitches.Armed));
        }
        Finite.Check(session.State(0), unit.Unit.Craft.Rotors.Count);
    }
}
