using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>An eye in the world.</summary>
/// <param name="Eye">Where it is, in the world, m.</param>
/// <param name="Look">Its axes (x ahead, y right, z down) to the world.</param>
/// <param name="VerticalFieldOfView">Angle between top and bottom of the picture, rad; above 0, below pi.</param>
/// <param name="Bend">0 straight lines stay straight; 1 a wide lens with equal angles per distance from the middle.</param>
public readonly record struct Camera(Vec3 Eye, Quat Look, double VerticalFieldOfView, double Bend);
