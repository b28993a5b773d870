using Simfeel.Builds.Reading;

namespace Simfeel.Builds;

/// <summary>
/// A craft described by its parts: validated, complete (every missing number is filled in and listed) and immutable.
/// SI units and radians; body axes x forward, y right, z down from the build's origin, the centre of the bottom plate
/// in the arms' middle plane.
/// </summary>
public sealed record Build
{
    /// <summary>Name of the build.</summary>
    public required string Name { get; init; }

    /// <summary>A sentence or two about it; may be empty.</summary>
    public required string Description { get; init; }

    /// <summary>Size class in the trade's words; may be empty.</summary>
    public required string ClassLabel { get; init; }

    /// <summary>Arms and plates.</summary>
    public required FrameSpec Frame { get; init; }

    /// <summary>The motors, all alike.</summary>
    public required MotorSpec Motor { get; init; }

    /// <summary>The propellers, all alike but for their direction.</summary>
    public required PropellerSpec Propeller { get; init; }

    /// <summary>Speed controller, per motor.</summary>
    public required SpeedControllerSpec SpeedController { get; init; }

    /// <summary>Battery.</summary>
    public required BatterySpec Battery { get; init; }

    /// <summary>Electronics and wiring.</summary>
    public required StackSpec Stack { get; init; }

    /// <summary>Flight camera.</summary>
    public required CameraSpec Camera { get; init; }

    /// <summary>Further parts.</summary>
    public required IReadOnlyList<ExtraSpec> Extras { get; init; }

    /// <summary>Body drag.</summary>
    public required DragSpec Drag { get; init; }

    /// <summary>Gyro filter.</summary>
    public required GyroSpec Gyro { get; init; }

    /// <summary>Stick curves.</summary>
    public required PilotSpec Pilot { get; init; }

    /// <summary>Measured overrides.</summary>
    public required MeasuredSpec Measured { get; init; }

    /// <summary>Every number of the build with its unit and provenance, in the order of the format.</summary>
    public required IReadOnlyList<BuildValue> Values { get; init; }

    /// <summary>The texts that it was read from, before any edit; null in a hybrid of two builds.</summary>
    public BuildSource? Source => Sheet is null ? null : new(Sheet.Text, Sheet.Polar?.File, Sheet.Polar?.Text);

    /// <summary>What the file said, kept for edits; null in a hybrid of two builds.</summary>
    internal BuildSheet? Sheet { get; init; }
}
