using Simfeel.Physics;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests;

/// <summary>The speed controller's command delay in the flight loop.</summary>
public class CommandDelayTests
{
    // rows after which the hover has settled to what the controller really asks for, and rows compared from the change on
    private static readonly int Start = Steps(0.1), Compared = Steps(0.03);

    /// <summary>
    /// Two craft, alike but for the delay, get the same step of thrust. The late one's duty changes exactly that much
    /// later, from one physics step to 50 ms, and its rotors then follow the same curve, shifted. What differs, a thousandth,
    /// less than the rotors gain in one step, is the pack, which has emptied meanwhile, and the climb so far.
    /// </summary>
    [Theory]
    [InlineData(0.00025)]
    [InlineData(0.002)]
    [InlineData(0.05)]
    public void Rotors_follow_exactly_the_delay_later(double delay)
    {
        int steps = Steps(delay);
        Assert.Equal(delay, steps / (double)Starters.Profile.StepRate, 1e-12);
        TunedUnit unit = Starters.Get("wagtail");
        (double Duty, double Speed)[] prompt = Step(unit, 0), late = Step(unit, delay);
        int first = FirstChange(prompt);
        Assert.Equal(first + steps, FirstChange(late));
        double rise = prompt[Start + Compared].Speed - prompt[Start - 1].Speed;
        Assert.True(rise > 200, $"{rise} rad/s");
        for (int n = 0; n < Compared; n++)
        {
            Assert.Equal(prompt[first + n].Duty, late[first + steps + n].Duty, 1e-3);
            Assert.Equal(prompt[first + n].Speed, late[first + steps + n].Speed, 2e-3 * rise);
        }
    }

    /// <summary>Physics steps in a time, s.</summary>
    private static int Steps(double seconds) => (int)Math.Round(seconds * Starters.Profile.StepRate);

    private static int FirstChange((double Duty, double Speed)[] rows) =>
        Enumerable.Range(Start, rows.Length - Start).First(n => Math.Abs(rows[n].Duty - rows[Start - 1].Duty) > 0.01);

    /// <summary>Duty and speed of the first rotor after every physics step of a step from hover to twice the thrust.</summary>
    private static (double Duty, double Speed)[] Step(TunedUnit unit, double delay)
    {
        // without feedback of rates: gains made for one delay would swing with another
        TunedUnit delayed = unit with
        {
            Unit = unit.Unit with { CommandDelay = delay },
            Roll = unit.Roll with { Gains = default },
            Pitch = unit.Pitch with { Gains = default },
            Yaw = unit.Yaw with { Gains = default },
        };
        using FlightLoop<Lane1> loop = new(unit.Unit.Craft.Rotors.Count, Starters.Profile, new());
        loop.SetUnit(0, delayed, unit.Hover.State);
        (double, double)[] rows = new (double, double)[Start + Steps(0.0825)];
        for (int n = 0; n < rows.Length; n++)
        {
            if (n == Start) loop.SetCommand(0, Vec3.Zero, 2 * unit.HoverShare);
            loop.Tick();
            loop.Batch.Evaluate();
            Sample sample = loop.Batch.GetSample(0);
            rows[n] = (sample.Duty[0], sample.State.RotorSpeeds[0]);
        }
        return rows;
    }
}
