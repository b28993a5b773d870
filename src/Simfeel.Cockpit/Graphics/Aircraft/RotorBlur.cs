using Simfeel.Cockpit.Graphics.Landscape;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>How turning blades look in one picture.</summary>
/// <param name="Blades">Opacity of sharp blades.</param>
/// <param name="Disc">Opacity of the blurred disc.</param>
/// <param name="Ghosts">How much of the blades is still seen in the disc, 0 to 1.</param>
internal readonly record struct RotorBlur(float Blades, float Disc, float Ghosts)
{
    // What an eye or a camera gathers in one picture, s.
    private const double Exposure = 1.0 / 100;

    /// <summary>The look of blades, by how many of their spacings they move in one picture.</summary>
    /// <param name="speed">Rotor speed, rad/s.</param>
    /// <param name="blades">Number of blades.</param>
    public static RotorBlur Of(double speed, int blades)
    {
        double spacings = Math.Abs(speed) * Exposure * blades / (2 * Math.PI);
        double sharp = 1 - TileNoise.Step(0.12, 0.75, spacings);
        return new((float)sharp, (float)TileNoise.Step(0.08, 0.5, spacings), (float)(0.85 * Math.Min(1, 0.8 / Math.Max(spacings, 1e-6))));
    }
}
