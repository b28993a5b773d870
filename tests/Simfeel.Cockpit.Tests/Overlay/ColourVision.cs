using SkiaSharp;

namespace Simfeel.Cockpit.Tests.Overlay;

/// <summary>How colours look to others, and how far apart they are.</summary>
internal static class ColourVision
{
    /// <summary>
    /// Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE
    /// Transactions on Visualization and Computer Graphics 15 (2009), matrices of severity 1.0, on linear RGB.
    /// </summary>
    public static readonly (string Name, double[] Matrix)[] All =
    [
        ("usual", [1, 0, 0, 0, 1, 0, 0, 0, 1]),
        ("protanopia", [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998]),
        ("deuteranopia", [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881]),
        ("tritanopia", [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900]),
    ];

    /// <summary>Linear red, green and blue, 0 to 1, as somebody sees a colour.</summary>
    public static double[] Seen(SKColor colour, double[] matrix)
    {
        double[] rgb = [Linear(colour.Red), Linear(colour.Green), Linear(colour.Blue)];
        return [.. Enumerable.Range(0, 3).Select(k =>
            Math.Clamp(matrix[3 * k] * rgb[0] + matrix[3 * k + 1] * rgb[1] + matrix[3 * k + 2] * rgb[2], 0, 1))];
    }

    /// <summary>A translucent colour over another one.</summary>
    public static SKColor Over(SKColor front, SKColor back)
    {
        return new(Mix(front.Red, back.Red), Mix(front.Green, back.Green), Mix(front.Blue, back.Blue));

        byte Mix(byte one, byte other) => (byte)Math.Round((one * front.Alpha + other * (255 - front.Alpha)) / 255.0);
    }

    /// <summary>Contrast ratio after WCAG 2.2, 1 to 21, of two linear colours.</summary>
    public static double Contrast(double[] one, double[] other)
    {
        (double a, double b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>CIE 1976 colour difference under D65 of two linear colours; about 2.3 is just to be seen.</summary>
    public static double Difference(double[] one, double[] other)
    {
        (double[] a, double[] b) = (Lab(one), Lab(other));
        return Math.Sqrt(Enumerable.Range(0, 3).Sum(k => (a[k] - b[k]) * (a[k] - b[k])));
    }

    private static double Luminance(double[] linear) => 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];

    /// <summary>IEC 61966-2-1.</summary>
    private static double Linear(byte value)
    {
        double share = value / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }

    private static double[] Lab(double[] rgb)
    {
        double x = F((0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505);
        double y = F(Luminance(rgb));
        double z = F((0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.0890);
        return [116 * y - 16, 500 * (x - y), 200 * (y - z)];

        static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
