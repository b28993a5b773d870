using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Simfeel.Builds;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Stand;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>
/// A stand test of a craft whose constants are known: the virtual thrust stand of the flight kernel gives the truth, and
/// the noise, units and format are made here.
/// </summary>
internal sealed class SyntheticStand
{
    private static readonly ConcurrentDictionary<string, Lazy<AssembledBuild>> Builds = new();

    private readonly Random _random;

    /// <summary>A starter build and the truth: the same with constants changed by known factors.</summary>
    public SyntheticStand(string starter, int seed, IReadOnlyDictionary<string, double> factors)
    {
        _random = new(seed);
        Start = Starter(starter);
        Truth = Assembled(BuildEditor.Edit(Start.Build, factors.Select(f => new KeyValuePair<string, double>(f.Key, f.Value * Value(f.Key)))).Build!);
    }

    public AssembledBuild Start { get; }

    public AssembledBuild Truth { get; }

    /// <summary>Rows of a sweep: throttle, thrust N, torque N m, V, A, rad/s; torque and thrust NaN without a propeller.</summary>
    public List<double[]> Rows { get; } = [];

    /// <summary>A starter build, assembled once.</summary>
    public static AssembledBuild Starter(string name) => Builds.GetOrAdd(name, key => new(() =>
        Assembled(BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", key + ".toml")).Build!))).Value;

    public static AssembledBuild Assembled(Build build) => BuildAssembler.Assemble(build, Starters.Air);

    /// <summary>The value of a key before any factor.</summary>
    public double Value(string key) => Start.Values.Single(value => value.Key == key).Typical;

    /// <summary>Adds a sweep with a propeller, each point read several times.</summary>
    public SyntheticStand Sweep(int points, double from, int readings = 1, Func<double, double>? dutyOf = null, double noise = 0.01)
    {
        for (int n = 0; n < points; n++)
        {
            double throttle = from + ((1 - from) * n / (points - 1));
            OperatingPoint at = Stand(Truth.Craft).AtDuty(dutyOf?.Invoke(throttle) ?? throttle);
            for (int r = 0; r < readings; r++)
                Rows.Add([throttle, Noisy(at.Thrust), Noisy(at.Torque), Noisy(at.PackVoltage), Noisy(at.PackCurrent), Noisy(at.Speed)]);
        }
        return this;

        double Noisy(double value) => value * (1 + (noise * Gaussian()));
    }

    /// <summary>Adds rows of the motor without its propeller.</summary>
    public SyntheticStand NoPropeller(int points, int readings = 1)
    {
        Craft bare = Truth.Craft with
        {
            Rotors = [.. Truth.Craft.Rotors.Select(rotor => rotor with { Table = new(new double[Physics.Rotors.RotorTable.NodeCount]) })],
        };
        for (int n = 0; n < points; n++)
        {
            double throttle = 0.3 + (0.7 * n / (points - 1.0));
            OperatingPoint at = Stand(bare).AtDuty(throttle);
            for (int r = 0; r < readings; r++)
                Rows.Add([throttle, 0, 0, at.PackVoltage * (1 + (0.01 * Gaussian())), at.PackCurrent * (1 + (0.01 * Gaussian())), at.Speed * (1 + (0.01 * Gaussian()))]);
        }
        return this;
    }

    /// <summary>The rows as a plain table: percent, gf, mN m, V, A, rpm.</summary>
    public string Csv()
    {
        StringBuilder text = new("Throttle [%],Thrust [gf],Torque [mN m],Voltage [V],Current [A],RPM\n");
        foreach (double[] row in Rows)
            text.AppendLine(CultureInfo.InvariantCulture, $"{100 * row[0]:F2},{row[1] / 9.80665e-3:F3},{1e3 * row[2]:F4},{row[3]:F4},{row[4]:F5},{row[5] * 30 / Math.PI:F1}");
        return text.ToString();
    }

    private static VirtualStand Stand(Craft craft) =>
        new(craft with { Battery = craft.Battery with { ElectronicsPower = 0 } }, Starters.Air.Density, 0.9, 1);

    private double Gaussian() =>
        Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
