using Simfeel.Flight.Drills;
using Simfeel.Physics;

namespace Simfeel.Flight.Tests.Drills;

/// <summary>Rows of a log give back what was recorded.</summary>
public class LogRowTests
{
    private static readonly FlightLog[] Logs = DrillBatch.Fly(
        DrillCatalogue.Flip, [Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Get("knot")], Starters.Profile, 1, new());

    [Fact]
    public void Samples_put_into_rows_come_out_as_they_were()
    {
        Sample[] samples = [.. Logs[1].Samples.Select(row => row.ToSample())];
        Assert.Equal(2001, samples.Length);
        Assert.NotEqual(samples[500].Thrust[3], samples[501].Thrust[3]);
        LogRows rows = LogRows.Of(samples, 4);
        for (int row = 0; row < samples.Length; row += 97) SampleAssert.Equal(samples[row], rows[row]);
    }

    [Fact]
    public void A_copy_without_loads_keeps_states_duties_and_sticks()
    {
        FlightLog log = Logs[2], kept = log.StatesOnly();
        Assert.Equal(log.Hash(), kept.Hash());
        Assert.Equal(log.Sticks, kept.Sticks);
        Sample expected = log.Samples[700];
        Sample bare = new() { State = expected.State, Duty = expected.Duty };
        SampleAssert.Equal(bare, kept.Samples[700]);
    }

    [Fact]
    public void There_is_no_row_before_the_first_or_after_the_last()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Logs[0].Samples[-1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => Logs[0].Samples[Logs[0].Samples.Count]);
    }
}

/// <summary>Compares samples number by number, to the bit.</summary>
internal static class SampleAssert
{
    public static void Equal(in Sample expected, in Sample actual)
    {
        Assert.Equal(expected.a_WB, actual.a_WB);
        Assert.Equal(expected.AngularAcceleration_B, actual.AngularAcceleration_B);
        Assert.Equal(expected.AirVelocity_B, actual.AirVelocity_B);
        Assert.Equal(expected.AirForce_B, actual.AirForce_B);
        Assert.Equal(expected.RotorForce_B, actual.RotorForce_B);
        Assert.Equal((expected.PackVoltage, expected.PackCurrent), (actual.PackVoltage, actual.PackCurrent));
        Assert.Equal((expected.State.p_WB, expected.State.v_WB), (actual.State.p_WB, actual.State.v_WB));
        Assert.Equal((expected.State.q_WB, expected.State.w_WB_B), (actual.State.q_WB, actual.State.w_WB_B));
        Assert.Equal((expected.State.Charge, expected.State.PairVoltage), (actual.State.Charge, actual.State.PairVoltage));
        Same(expected.State.RotorSpeeds, actual.State.RotorSpeeds);
        Same(expected.State.InducedVelocities, actual.State.InducedVelocities);
        Same(expected.Duty, actual.Duty);
        Same(expected.Thrust, actual.Thrust);
        Same(expected.ThrustFactor, actual.ThrustFactor);
        Same(expected.AirTorque, actual.AirTorque);
        Same(expected.MotorTorque, actual.MotorTorque);
        Same(expected.MotorCurrent, actual.MotorCurrent);
        Same(expected.ReserveUp, actual.ReserveUp);
        Same(expected.ReserveDown, actual.ReserveDown);
    }

    private static void Same(PerRotor expected, PerRotor actual)
    {
        for (int k = 0; k < Craft.MaxRotors; k++) Assert.Equal(expected[k], actual[k]);
    }
}
