using System.Globalization;
using System.Runtime.Intrinsics.X86;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// Sixteen different craft from different states through a flight that touches everything (limits, braking, wind,
/// irregular tables, wakes and ground), hashed. The hash of double lanes must not depend on lane width, threads or instruction set.
/// </summary>
public static class HashRun
{
    /// <summary>Number of craft.</summary>
    public const int Count = 16;

    private const int StepsPerRefresh = 8;

    private static readonly RotorTable[] Tables =
        [TestCraft.Irregular, TestCraft.Constant(0.018, 0.0022, 0.03, 0.004), TestCraft.MakeIrregular(99)];

    /// <summary>The craft of a place, 0 to <see cref="Count"/> - 1.</summary>
    public static Craft CraftOf(int place) => TestCraft.Quad(Tables[place % Tables.Length], place);

    /// <summary>Where it starts.</summary>
    public static CraftState StartOf(int place, Craft craft)
    {
        CraftState state = CraftState.AtRest(craft, 1 - (0.06 * place));
        state.q_WB = Quat.FromEuler(0.2 * place, 0.4 - (0.05 * place), -0.3 * place);
        state.v_WB = new(3 + place, -4 + (0.7 * place), 5 - place);
        state.w_WB_B = new(place - 6, 9 - (1.3 * place), 0.8 * place);
        for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = (220 * place) - 300 + (150 * k);
        return state;
    }

    /// <summary>
    /// The hash of every craft after a number of steps of 1/8000 s, flown in batches of a lane type; with polynomials for the
    /// rotors where they hold for more than 0 steps.
    /// </summary>
    public static ulong[] Fly<T>(Integrator integrator, int steps, int threads = 1, int hold = 0)
        where T : unmanaged, ILane<T>
    {
        ulong[] hash = new ulong[Count];
        int batches = Count / T.Width;
        Parallel.For(0, batches, new() { MaxDegreeOfParallelism = threads }, b =>
        {
            using CraftBatch<T> batch = Batch<T>(b * T.Width);
            if (hold > 0) batch.SetRotorModel(RotorModel.Polynomials, hold);
            for (int n = 0; n < steps; n++)
            {
                Command(batch, b * T.Width, n);
                if (n % StepsPerRefresh == 0) batch.RefreshSurroundings(7, n / StepsPerRefresh, StepsPerRefresh / 8000.0);
                batch.Step(integrator, 1.0 / 8000);
            }
            for (int lane = 0; lane < T.Width; lane++) hash[(b * T.Width) + lane] = batch.Hash(lane);
        });
        return hash;
    }

    /// <summary>A batch of the craft from a place on, each in its own air.</summary>
    public static CraftBatch<T> Batch<T>(int first)
        where T : unmanaged, ILane<T>
    {
        CraftBatch<T> batch = new(4);
        batch.SetEffects(AirEffects.All, 0.4);
        for (int lane = 0; lane < T.Width; lane++)
        {
            int place = first + lane;
            Craft craft = CraftOf(place);
            batch.SetCraft(lane, craft);
            batch.SetField(lane, 1.25 - (0.01 * place), 9.8 + (0.001 * place), new(0.5 * place, -1, 0.1 * place));
            batch.SetState(lane, StartOf(place, craft));
        }
        return batch;
    }

    /// <summary>Duties of step n: full, zero and between, changing every 50 steps.</summary>
    public static void Command<T>(CraftBatch<T> batch, int first, int n)
        where T : unmanaged, ILane<T>
    {
        if (n % 50 != 0) return;
        for (int lane = 0; lane < T.Width; lane++)
            for (int k = 0; k < 4; k++)
            {
                batch.SetCommand(lane, k, ((n / 50 * 3) + (5 * k) + (7 * (first + lane))) % 11 / 10.0);
            }
    }

    /// <summary>Some steps of every lane type with both integrators, so that the compiler meets all of the kernel.</summary>
    public static void Drive(int steps)
    {
        foreach (Integrator integrator in Enum.GetValues<Integrator>())
        {
            Fly<Lane1>(integrator, steps);
            Fly<Lane4>(integrator, steps);
            Fly<Lane8>(integrator, steps);
            Fly<LaneF16>(integrator, steps);
        }
        // often enough for the compiler to find that the fit is worth its while
        Fly<Lane1>(Integrator.Midpoint, steps, hold: 1);
        Fly<Lane4>(Integrator.Midpoint, steps, hold: 1);
        Fly<Lane8>(Integrator.Midpoint, steps, hold: 1);
        Fly<LaneF16>(Integrator.Midpoint, steps, hold: 1);
    }

    /// <summary>Instruction sets in use, then one line for each hash: what runs with other settings must print again.</summary>
    public static IEnumerable<string> Lines(int steps)
    {
        yield return $"avx512 {Avx512F.IsSupported}, avx2 {Avx2.IsSupported}, sse4.2 {Sse42.IsSupported}";
        (string Name, Integrator Integrator, int Hold)[] ways =
            [("Midpoint", Integrator.Midpoint, 0), ("RungeKutta", Integrator.RungeKutta, 0), ("Polynomials", Integrator.Midpoint, 12)];
        foreach ((string way, Integrator integrator, int hold) in ways)
        {
            yield return Line("Lane1", Fly<Lane1>(integrator, steps, hold: hold));
            yield return Line("Lane4", Fly<Lane4>(integrator, steps, hold: hold));
            yield return Line("Lane8", Fly<Lane8>(integrator, steps, hold: hold));
            yield return Line("Lane4 on two threads", Fly<Lane4>(integrator, steps, 2, hold));
            yield return Line("LaneF16", Fly<LaneF16>(integrator, steps, hold: hold));

            string Line(string name, ulong[] hashes)
            {
                ulong all = StateHash.Start;
                foreach (ulong h in hashes) all = StateHash.Mix(all, BitConverter.UInt64BitsToDouble(h));
                return string.Create(CultureInfo.InvariantCulture, $"{name} {way} {all:x16}");
            }
        }
    }
}
