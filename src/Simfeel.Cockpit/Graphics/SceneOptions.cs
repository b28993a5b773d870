namespace Simfeel.Cockpit.Graphics;

/// <summary>What a picture shows beyond field and craft.</summary>
/// <param name="Time">Time of waves and lamps, s.</param>
/// <param name="MassView">Parts as spheres of their mass, inertia ellipsoid, axes, thrust and weight arrows.</param>
/// <param name="ReferencePlane">
/// A plumb line from each craft with a mark every metre, and a metre grid on the ground about its foot.
/// </param>
/// <param name="LevelGrid">Height over the world's origin of a level metre grid, m; null for none.</param>
public readonly record struct SceneOptions(double Time, bool MassView = false, bool ReferencePlane = false, double? LevelGrid = null);
