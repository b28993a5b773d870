using System.Numerics;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Handling;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>
/// Systems whose bandwidth and phase delay were solved in closed form outside of this code: attitude to command
/// e^(-tau s) / (s (T s + 1)) for a rate command, wn^2 e^(-tau s) / (s^2 + 2 zeta wn s + wn^2) for an attitude command.
/// </summary>
internal sealed record ModelSystem(ResponseType Type, double A, double B, double Delay, double W180, double Phase, double Gain, double PhaseDelay)
{
    public static ModelSystem[] All { get; } =
    [
        new(ResponseType.Rate, 0.1, 0, 0.03, 17.3930392, 6.64044252, 11.48469256, 0.021953007),
        new(ResponseType.Rate, 0.05, 0, 0.02, 29.6620964, 12.0878172, 19.1885571, 0.014518860),
        new(ResponseType.Attitude, 20, 0.7, 0.02, 38.8168635, 24.6526088, 25.9747175, 0.015251470),
        new(ResponseType.Attitude, 10, 0.8, 0.015, 32.8469610, 15.9759609, 22.8149220, 0.011280494),
    ];

    public double Bandwidth => Type == ResponseType.Rate ? Math.Min(Phase, Gain) : Phase;

    public FrequencyResponse Analytic(int count)
    {
        double[] w = [.. Enumerable.Range(0, count).Select(n => 1 * Math.Pow(400, n / (count - 1.0)))];
        return new(w, [.. w.Select(At)]);
    }

    private Complex At(double w)
    {
        Complex s = new(0, w), late = Complex.Exp(-Delay * s);
        return Type == ResponseType.Rate ? late / (s * ((A * s) + 1)) : A * A * late / ((s * s) + (2 * B * A * s) + (A * A));
    }

    /// <summary>Rate (rate command) or attitude at each row of 1 ms, by RK4 over eighths of a row; the dead time is a delay line.</summary>
    public double[] Simulate(double[] input, double period)
    {
        const int fine = 8;
        double h = period / fine;
        double[] output = new double[input.Length];
        double x = 0, v = 0;
        for (int row = 0; row + 1 < input.Length; row++)
        {
            output[row] = x;
            for (int n = 0; n < fine; n++)
            {
                double t = (row * period) + (n * h) - Delay;
                double u0 = Late(t), u1 = Late(t + (h / 2)), u2 = Late(t + h);
                (double a, double b) k1 = Slope(x, v, u0), k2 = Slope(x + (h / 2 * k1.a), v + (h / 2 * k1.b), u1);
                (double a, double b) k3 = Slope(x + (h / 2 * k2.a), v + (h / 2 * k2.b), u1), k4 = Slope(x + (h * k3.a), v + (h * k3.b), u2);
                x += h / 6 * (k1.a + (2 * k2.a) + (2 * k3.a) + k4.a);
                v += h / 6 * (k1.b + (2 * k2.b) + (2 * k3.b) + k4.b);
            }
        }
        output[^1] = x;
        return output;

        double Late(double time)
        {
            double row = time / period;
            if (row <= 0) return input[0];
            int before = Math.Min((int)row, input.Length - 2);
            return input[before] + ((row - before) * (input[before + 1] - input[before]));
        }

        (double, double) Slope(double angle, double rate, double u) =>
            Type == ResponseType.Rate ? ((u - angle) / A, 0) : (rate, (A * A * (u - angle)) - (2 * B * A * rate));
    }

    /// <summary>Commands of a drill at rows of 1 ms, as a craft that does not matter would fly it.</summary>
    public static double[] Commands(Drill drill)
    {
        Func<PilotView, Simfeel.Flight.Sticks> script = drill.NewScript(new(Starters.Get("wagtail"), Starters.Profile, 1));
        LogRow still = LogRows.Of([default], 4)[0];
        PilotView view = new(0.001);
        return [.. Enumerable.Range(0, (int)Math.Round(drill.Duration / 0.001) + 1).Select(At)];

        double At(int row)
        {
            view.Move(row * 0.001, still);
            return script(view).Roll;
        }
    }

    public BandwidthCriterion Swept() => BandwidthCriterion.Of(Identify(HandlingDrills.Chirp(HandlingAxis.Roll), ChirpIdentification.Identify), Type);

    public BandwidthCriterion Stepped() => BandwidthCriterion.Of(Identify(StepIdentification.Step(HandlingAxis.Roll), StepIdentification.Identify), Type);

    private FrequencyResponse Identify(Drill drill, Func<double[], double[], double, double, double, bool, FrequencyResponse> identify)
    {
        double[] input = Commands(drill);
        return identify(input, Simulate(input, 0.001), 0.001, HandlingFlight.From, HandlingFlight.To, Type == ResponseType.Rate);
    }
}
