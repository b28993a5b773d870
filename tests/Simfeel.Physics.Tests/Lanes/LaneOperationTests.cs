using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Tests.Lanes;

/// <summary>
/// Every operation of every kind of lane is the operation of IEEE 754-2019 on each number by itself, to the last bit: .NET's scalar
/// arithmetic on random numbers of both signs, NaN, infinities and both zeros.
/// </summary>
public unsafe class LaneOperationTests
{
    private static readonly double[] Special = [0, -0.0, 1, -1, double.NaN, double.PositiveInfinity, double.NegativeInfinity];

    [Fact]
    public void One_number() => Check<Lane1>();

    [Fact]
    public void Four_numbers() => Check<Lane4>();

    [Fact]
    public void Eight_numbers() => Check<Lane8>();

    [Fact]
    public void Sixteen_numbers_in_single_precision() => Check<LaneF16>();

    private static void Check<T>()
        where T : unmanaged, ILane<T>
    {
        T* a = LaneMemory.Allocate<T>(), b = LaneMemory.Allocate<T>(), c = LaneMemory.Allocate<T>();
        double[] x = new double[T.Width], y = new double[T.Width], z = new double[T.Width];
        Random random = new(7);
        for (int n = 0; n < 300; n++)
        {
            for (int lane = 0; lane < T.Width; lane++)
            {
                LaneMemory.Set(a, lane, x[lane] = Any());
                LaneMemory.Set(b, lane, y[lane] = random.Next(8) == 0 ? x[lane] : Any());
                LaneMemory.Set(c, lane, z[lane] = Any());
            }
            Same(*a + *b, (p, q, r) => p + q, (p, q, r) => p + q);
            Same(*a - *b, (p, q, r) => p - q, (p, q, r) => p - q);
            Same(*a * *b, (p, q, r) => p * q, (p, q, r) => p * q);
            Same(*a / *b, (p, q, r) => p / q, (p, q, r) => p / q);
            Same(-*a, (p, q, r) => -p, (p, q, r) => -p);
            Same(T.Fma(*a, *b, *c), Math.FusedMultiplyAdd, MathF.FusedMultiplyAdd);
            Same(T.Fms(*a, *b, *c), (p, q, r) => Math.FusedMultiplyAdd(p, q, -r), (p, q, r) => MathF.FusedMultiplyAdd(p, q, -r));
            Same(T.Fnma(*a, *b, *c), (p, q, r) => Math.FusedMultiplyAdd(-p, q, r), (p, q, r) => MathF.FusedMultiplyAdd(-p, q, r));
            Same(T.Sqrt(*a), (p, q, r) => Math.Sqrt(p), (p, q, r) => MathF.Sqrt(p));
            Same(T.Abs(*a), (p, q, r) => Math.Abs(p), (p, q, r) => MathF.Abs(p));
            // which of two zeros is the smaller is not promised, which is why they are compared as numbers
            Same(T.Min(*a, *b), (p, q, r) => p < q ? p : q, (p, q, r) => p < q ? p : q, bits: false);
            Same(T.Max(*a, *b), (p, q, r) => p > q ? p : q, (p, q, r) => p > q ? p : q, bits: false);
            Same(T.IfLess(*a, *b, *c, *a), (p, q, r) => p < q ? r : p, (p, q, r) => p < q ? r : p);
            Same(T.Of(x[0]), (_, _, _) => x[0], (_, _, _) => (float)x[0]);
            Assert.Equal(x.Zip(y).All(pair => pair.First == pair.Second), T.AllEqual(*a, *b));
            bool numbers = !x.Any(double.IsNaN);
            Assert.Equal(numbers, T.AllEqual(*a, *a));
            // a single lane that differs is seen in any place
            int odd = n % T.Width;
            *b = *a;
            LaneMemory.Set(b, odd, x[odd] == 1 ? 2 : 1);
            Assert.False(T.AllEqual(*a, *b));
        }
        LaneMemory.Free(a);
        LaneMemory.Free(b);
        LaneMemory.Free(c);

        double Any()
        {
            double any = random.Next(12) == 0 ? Special[random.Next(Special.Length)] : Math.ScaleB((2 * random.NextDouble()) - 1, random.Next(-20, 20));
            return T.IsSingle ? (float)any : any;
        }

        void Same(T result, Func<double, double, double, double> twofold, Func<float, float, float, float> single, bool bits = true)
        {
            double* stored = stackalloc double[T.Width];
            T.Store(result, stored);
            for (int lane = 0; lane < T.Width; lane++)
            {
                double expected = T.IsSingle ? single((float)x[lane], (float)y[lane], (float)z[lane]) : twofold(x[lane], y[lane], z[lane]);
                bool same = double.IsNaN(expected) ? double.IsNaN(stored[lane]) : bits ? BitConverter.DoubleToInt64Bits(expected) == BitConverter.DoubleToInt64Bits(stored[lane]) : expected == stored[lane];
                Assert.True(same, $"{x[lane]:R} {y[lane]:R} {z[lane]:R}: {stored[lane]:R} instead of {expected:R} in lane {lane}");
                Assert.Equal(stored[lane], LaneMemory.Get(&result, lane));
            }
        }
    }
}
