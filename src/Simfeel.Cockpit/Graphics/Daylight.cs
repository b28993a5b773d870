using System.Globalization;
using System.Numerics;

namespace Simfeel.Cockpit.Graphics;

/// <summary>The light of a calm afternoon, in linear values. The one source for textures and shaders.</summary>
internal static class Daylight
{
    /// <summary>Unit vector to the sun in G: in the south-west, 33 degrees high.</summary>
    public static Vector3 Sun { get; } = Vector3.Normalize(new(-0.62f, -0.56f, 0.545f));

    /// <summary>Light of the sun on a surface that faces it.</summary>
    public static Vector3 SunLight { get; } = new(1.86f, 1.60f, 1.22f);

    /// <summary>Light of the sky on what faces up.</summary>
    public static Vector3 SkyLight { get; } = new(0.42f, 0.52f, 0.66f);

    /// <summary>Light from the ground on what faces down.</summary>
    public static Vector3 Bounce { get; } = new(0.23f, 0.21f, 0.16f);

    /// <summary>Colour of far haze and of the sky at the horizon.</summary>
    public static Vector3 Haze { get; } = new(0.645f, 0.735f, 0.800f);

    /// <summary>How fast haze gathers: half of the colour is lost after 1/this, 1/m.</summary>
    public const float HazePerMetre = 0.0013f;

    /// <summary>The same as constants of GLSL.</summary>
    public static string Glsl { get; } = string.Create(CultureInfo.InvariantCulture, $"""
        const vec3 SunLight = {Text(SunLight)};
        const vec3 SkyLight = {Text(SkyLight)};
        const vec3 Bounce = {Text(Bounce)};
        const vec3 HazeColour = {Text(Haze)};
        const vec3 HazeEncoded = {Text(new(LinearColour.Encoded(Haze.X), LinearColour.Encoded(Haze.Y), LinearColour.Encoded(Haze.Z)))};
        const float HazePerMetre = {HazePerMetre};

        """);

    private static string Text(Vector3 v) => string.Create(CultureInfo.InvariantCulture, $"vec3({v.X:F6}, {v.Y:F6}, {v.Z:F6})");
}
