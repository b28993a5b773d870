using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>What a scripted pilot goes by when the sticks are read.</summary>
/// <param name="Time">Since the start of the drill, s.</param>
/// <param name="Sample">The craft at this instant.</param>
/// <param name="Turned">Angles turned about the body axes since the start, rad.</param>
public readonly record struct PilotView(double Time, in Sample Sample, Vec3 Turned);
