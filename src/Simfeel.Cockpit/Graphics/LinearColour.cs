using System.Numerics;

namespace Simfeel.Cockpit.Graphics;

/// <summary>Colours as they are written down (sRGB, IEC 61966-2-1) and as light adds up.</summary>
internal static class LinearColour
{
    /// <summary>An sRGB colour (0xRRGGBB) in linear values.</summary>
    public static Vector3 Of(int rgb)
    {
        return new(Channel(rgb >> 16), Channel(rgb >> 8), Channel(rgb));

        static float Channel(int value)
        {
            double c = (value & 255) / 255.0;
            return (float)(c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4));
        }
    }

    /// <summary>A linear value as sRGB, 0 to 1.</summary>
    public static float Encoded(float linear)
    {
        double c = Math.Clamp(linear, 0, 1);
        return (float)(c <= 0.0031308 ? 12.92 * c : (1.055 * Math.Pow(c, 1 / 2.4)) - 0.055);
    }
}
