using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>What a scripted pilot goes by when the sticks are read; valid during the call only.</summary>
public readonly ref struct PilotView
{
    private readonly ref readonly Sample _sample;

    /// <summary>A view.</summary>
    public PilotView(double time, in Sample sample, Vec3 turned)
    {
        Time = time;
        _sample = ref sample;
        Turned = turned;
    }

    /// <summary>Since the start of the drill, s.</summary>
    public double Time { get; }

    /// <summary>The craft at this instant.</summary>
    public ref readonly Sample Sample => ref _sample;

    /// <summary>Angles turned about the body axes since the start, rad.</summary>
    public Vec3 Turned { get; }
}
