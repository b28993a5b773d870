using Simfeel.Physics;

namespace Simfeel.Flight.Traces;

/// <summary>
/// One row of a trace: the stick readings of one sample period and both craft at the last of them. Made once and filled again and
/// again; nothing is allocated by filling.
/// </summary>
public sealed class TraceRow
{
    /// <summary>Most stick readings that a row holds.</summary>
    public const int MostReadings = 1000;

    private readonly float[][] _values;
    private readonly PilotInput[] _inputs;
    private readonly int[] _rotors;

    /// <summary>An empty row.</summary>
    /// <param name="readings">Stick readings in a full row.</param>
    /// <param name="rotorsA">Rotors of the first craft.</param>
    /// <param name="rotorsB">Rotors of the second craft.</param>
    public TraceRow(int readings, int rotorsA, int rotorsB)
    {
        _inputs = new PilotInput[readings];
        _rotors = [rotorsA, rotorsB];
        _values = [new float[CraftColumns.Count(rotorsA)], new float[CraftColumns.Count(rotorsB)]];
    }

    /// <summary>Stick readings in it; only the last row of a flight may have fewer than its header says.</summary>
    public int Count { get; internal set; }

    /// <summary>Stick readings since the session began, this row's included.</summary>
    public long Reading { get; internal set; }

    /// <summary>Time since the last restart at the row's last reading, s.</summary>
    public double SinceRestart { get; internal set; }

    /// <summary>0 or 1: the craft that is flown.</summary>
    public int Flown { get; internal set; }

    /// <summary><see cref="FlightSession.Hash"/> at the row's last reading.</summary>
    public ulong Hash { get; internal set; }

    /// <summary>The sticks and switches, in order.</summary>
    public ReadOnlySpan<PilotInput> Inputs => _inputs.AsSpan(0, Count);

    /// <summary>Room for the readings of a full row.</summary>
    internal Span<PilotInput> Room => _inputs;

    /// <summary>Whether a craft (0 or 1) flies; where it does not, its values mean nothing.</summary>
    public bool Flies(int craft) => (Flying & (1 << craft)) != 0;

    /// <summary>The values of a craft (0 or 1), in the order of <see cref="CraftColumns.Names"/>.</summary>
    public ReadOnlySpan<float> Values(int craft) => _values[craft];

    /// <summary>Whether a craft (0 or 1) crashed.</summary>
    public bool Crashed(int craft) => (CrashedBits & (1 << craft)) != 0;

    /// <summary>A bit for each rotor of a craft (0 or 1) whose propeller stands still after striking something.</summary>
    public byte Struck(int craft) => StruckBits[craft];

    internal int Flying { get; set; }

    internal int CrashedBits { get; set; }

    internal byte[] StruckBits { get; } = new byte[2];

    internal Span<float> Room32(int craft) => _values[craft];

    /// <summary>Takes both craft over from a session.</summary>
    internal void Take(FlightSession session)
    {
        Reading = session.Readings;
        SinceRestart = session.Time;
        Flown = session.Flown;
        Hash = session.Hash();
        Flying = 0;
        CrashedBits = 0;
        for (int craft = 0; craft < 2; craft++)
        {
            if (!session.Flies(craft)) continue;
            CraftCondition condition = session.Condition(craft);
            Flying |= 1 << craft;
            if (condition.Crashed) CrashedBits |= 1 << craft;
            StruckBits[craft] = (byte)condition.StruckRotors;
            Sample sample = session.Sample(craft);
            CraftColumns.Write(sample, _rotors[craft], _values[craft]);
        }
    }
}
