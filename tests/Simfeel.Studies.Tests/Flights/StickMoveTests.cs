using Simfeel.Studies.Flights;

namespace Simfeel.Studies.Tests.Flights;

/// <summary>When a stick counts as moving, from where, and when as held; readings by hand.</summary>
public class StickMoveTests
{
    /// <summary>Four still readings are longer than <see cref="StickMove.HoldTime"/>, three are not.</summary>
    private const double Period = 1.0 / 64;

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Out_and_back_without_a_rest_is_two_moves(int side)
    {
        StickMove move = default;
        Check(ref move, 0.1 * side, started: false, direction: 0, from: 0.1 * side);
        Check(ref move, 0.3 * side, started: true, direction: side, from: 0.1 * side);
        Check(ref move, 0.6 * side, started: false, direction: side, from: 0.1 * side);
        Check(ref move, 0.9 * side, started: false, direction: side, from: 0.1 * side);
        Check(ref move, 0.9 * side, started: false, direction: side, from: 0.1 * side);
        // a tremble back is no turning around, and the farthest place stays where it was
        Check(ref move, 0.885 * side, started: false, direction: side, from: 0.1 * side);
        Check(ref move, 0.87 * side, started: true, direction: -side, from: 0.9 * side);
        Check(ref move, 0.2 * side, started: false, direction: -side, from: 0.9 * side);
        Check(ref move, -0.4 * side, started: false, direction: -side, from: 0.9 * side);
        Check(ref move, -0.2 * side, started: true, direction: side, from: -0.4 * side);
    }

    [Fact]
    public void A_stick_that_rests_for_the_time_is_held_there()
    {
        StickMove move = default;
        Check(ref move, 0, started: false, direction: 0, from: 0);
        Check(ref move, 0.5, started: true, direction: 1, from: 0);
        for (int n = 0; n < 3; n++) Check(ref move, 0.5, started: false, direction: 1, from: 0);
        Check(ref move, 0.5, started: false, direction: 0, from: 0.5);
        // the next move counts from there, whichever way
        Check(ref move, 0.8, started: true, direction: 1, from: 0.5);
        // creeping on is no rest
        for (int n = 1; n <= 8; n++) Check(ref move, 0.8 + (0.025 * n), started: false, direction: 1, from: 0.5);
    }

    [Fact]
    public void Just_the_time_is_enough()
    {
        StickMove move = default;
        foreach (double stick in (double[])[0, 0.5, 0.5]) move.Take(stick, StickMove.HoldTime);
        Assert.Equal((0, 0.5), (move.Direction, move.From));
    }

    [Fact]
    public void Just_a_tremble_is_no_move_and_does_not_shift_the_place_of_rest()
    {
        StickMove move = default;
        move.Take(0, Period);
        for (int n = 0; n < 6; n++) Check(ref move, StickMove.Trembling, started: false, direction: 0, from: 0);
        Check(ref move, 1.5 * StickMove.Trembling, started: true, direction: 1, from: 0);

        // nor is it a turning around
        StickMove turned = default;
        turned.Take(0, Period);
        Check(ref turned, 2 * StickMove.Trembling, started: true, direction: 1, from: 0);
        Check(ref turned, StickMove.Trembling, started: false, direction: 1, from: 0);
        Check(ref turned, 0, started: true, direction: -1, from: 2 * StickMove.Trembling);
    }

    private static void Check(ref StickMove move, double stick, bool started, int direction, double from)
    {
        move.Take(stick, Period);
        Assert.Equal((started, direction), (move.Started, move.Direction));
        Assert.Equal(from, move.From, 12);
    }
}
