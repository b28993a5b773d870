using Simfeel.Physics.Guards;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>A record's places and words, one by one.</summary>
public class RecordDetailTests
{
    /// <summary>Every number has a place of its own: what is written is what is read.</summary>
    [Fact]
    public unsafe void Numbers_come_back_from_where_they_were_put()
    {
        StepMemory<Lane4> memory = new()
        {
            Constants = LaneMemory.Allocate<CraftLanes<Lane4>>(),
            Field = LaneMemory.Allocate<FieldLanes<Lane4>>(),
            Guard = LaneMemory.Allocate<GuardLanes<Lane4>>(),
            State = LaneMemory.Allocate<Lane4>(StateIndex.Stride),
            Derivative = LaneMemory.Allocate<Lane4>(StateIndex.Stride),
            Commands = LaneMemory.Allocate<Lane4>(Craft.MaxRotors),
            Fits = LaneMemory.Allocate<RotorFitLanes<Lane4>>(Craft.MaxRotors),
        };
        try
        {
            double[] numbers = [.. Enumerable.Range(1, StepNumbers.Names(4).Count).Select(n => (double)n)];
            memory.Write(4, numbers);
            for (int lane = 0; lane < 4; lane++) Assert.Equal(numbers, memory.Read(4, lane));
        }
        finally
        {
            LaneMemory.Free(memory.Constants);
            LaneMemory.Free(memory.Field);
            LaneMemory.Free(memory.Guard);
            LaneMemory.Free(memory.State);
            LaneMemory.Free(memory.Derivative);
            LaneMemory.Free(memory.Commands);
            LaneMemory.Free(memory.Fits);
        }
    }

    /// <summary>A name cannot break the lines of the text, and the last lane of the widest vector is one.</summary>
    [Fact]
    public void Names_stay_on_their_line_and_the_last_lane_is_read()
    {
        using CraftBatch<Lane1> batch = new(4);
        Craft craft = TestCraft.Quad(TestCraft.NoAir);
        batch.SetCraft(0, craft, "two\nlines\u0001");
        batch.SetField(0, 0, 9.81);
        batch.SetState(0, CraftState.AtRest(craft) with { p_WB = new(double.NaN, 0, 0) });
        string text = Assert.Throws<FlightFaultException>(() => batch.Step(Integrator.Midpoint, 1e-3)).Record.ToText();
        Assert.Equal("twolines", StepRecord.Parse(text).Craft);
        Assert.Equal(15, StepRecord.Parse(text.Replace("lane = 0\n", "lane = 15\n", StringComparison.Ordinal)).Lane);
        Assert.Throws<FormatException>(() => StepRecord.Parse(text.Replace("lane = 0\n", "lane = 16\n", StringComparison.Ordinal)));
    }
}
