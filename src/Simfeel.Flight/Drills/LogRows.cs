using System.Collections;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;

namespace Simfeel.Flight.Drills;

/// <summary>
/// What a flight recorded of one craft, row by row. The numbers stand as the batch wrote them, those of all craft that flew side by side
/// together (<see cref="RowIndex"/>); a row is read in place.
/// </summary>
public sealed class LogRows : IReadOnlyList<LogRow>
{
    private readonly double[] _states, _loads;
    private readonly int _width, _lane, _firstLoads;

    /// <summary>Rows of one lane of a batch.</summary>
    /// <param name="states">Rows of states of all lanes, one after the other.</param>
    /// <param name="loads">Rows of loads of all lanes, from a row of the flight on.</param>
    /// <param name="lane">Which lane, and how many there are.</param>
    /// <param name="rotorCount">Rotors of every craft.</param>
    /// <param name="rows">Rows of the flight, and the first of them with loads.</param>
    internal LogRows(double[] states, double[] loads, (int Lane, int Width) lane, int rotorCount, (int Count, int FirstLoads) rows)
    {
        (_states, _loads) = (states, loads);
        (_lane, _width) = lane;
        RotorCount = rotorCount;
        (Count, _firstLoads) = rows;
    }

    /// <inheritdoc/>
    public int Count { get; }

    /// <summary>Rotors of the craft.</summary>
    public int RotorCount { get; }

    /// <summary>A row.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such row.</exception>
    public LogRow this[int row]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)row, (uint)Count, nameof(row));
            return new(this, row);
        }
    }

    /// <summary>Rows of samples that come from elsewhere.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="rotorCount">Rotors of the craft.</param>
    public static LogRows Of(IReadOnlyList<Sample> samples, int rotorCount)
    {
        ArgumentNullException.ThrowIfNull(samples);
        int stateNumbers = RowIndex.States(rotorCount), loadNumbers = RowIndex.Loads(rotorCount);
        double[] states = new double[samples.Count * stateNumbers], loads = new double[samples.Count * loadNumbers];
        Span<double> block = stackalloc double[StateIndex.Stride];
        for (int row = 0; row < samples.Count; row++)
        {
            Sample sample = samples[row];
            Span<double> state = states.AsSpan(row * stateNumbers, stateNumbers);
            StateBlock.Write(sample.State, rotorCount, block);
            block[..RowIndex.Duty(rotorCount)].CopyTo(state);
            ((Span<double>)sample.Duty)[..rotorCount].CopyTo(state[RowIndex.Duty(rotorCount)..]);
            LogRow.Write(sample, rotorCount, loads.AsSpan(row * loadNumbers, loadNumbers));
        }
        return new(states, loads, (0, 1), rotorCount, (samples.Count, 0));
    }

    /// <summary>The same rows in memory of their own, without loads.</summary>
    internal LogRows StatesOnly()
    {
        int numbers = RowIndex.States(RotorCount);
        double[] states = GC.AllocateUninitializedArray<double>(Count * numbers);
        for (int row = 0, at = 0; row < Count; row++)
        {
            for (int number = 0; number < numbers; number++, at++) states[at] = State(row, number);
        }
        return new(states, [], (0, 1), RotorCount, (Count, Count));
    }

    /// <summary>Rows one after the other.</summary>
    public IEnumerator<LogRow> GetEnumerator()
    {
        for (int row = 0; row < Count; row++) yield return new(this, row);
    }

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>A number of a row of states.</summary>
    internal double State(int row, int number) => _states[(((row * RowIndex.States(RotorCount)) + number) * _width) + _lane];

    /// <summary>A number of a row of loads; 0 before the first row that has them.</summary>
    internal double Load(int row, int number) =>
        row < _firstLoads ? 0 : _loads[((((row - _firstLoads) * RowIndex.Loads(RotorCount)) + number) * _width) + _lane];

    /// <summary>A number of each rotor that follow one another in a row of states.</summary>
    internal PerRotor StateRotors(int row, int first)
    {
        PerRotor values = default;
        for (int k = 0; k < RotorCount; k++) values[k] = State(row, first + k);
        return values;
    }

    /// <summary>The same in a row of loads.</summary>
    internal PerRotor LoadRotors(int row, int first)
    {
        PerRotor values = default;
        for (int k = 0; k < RotorCount; k++) values[k] = Load(row, first + k);
        return values;
    }
}

/// <summary>A number read off a row.</summary>
public delegate double Signal(LogRow row);
