using Simfeel.Cockpit.Graphics.OpenGl;
using SkiaSharp;

namespace Simfeel.Cockpit.Tests.Graphics;

/// <summary>
/// Compares pictures with those kept under <c>golden</c>. Another version of the software renderer rounds a little
/// differently, so a mean difference below 2 of 255 and 0.5 % of the pixels farther off than 24 are allowed. With the
/// environment variable <c>SIMFEEL_GOLDEN=write</c> the pictures are renewed instead; look at them before they are committed.
/// </summary>
internal static class GoldenPicture
{
    private const double MostMean = 2, MostFarShare = 0.005;
    private const int Far = 24;

    private static string Folder => Path.Combine(SceneStage.Root, "tests", "Simfeel.Cockpit.Tests", "golden");

    public static void Check(string name, byte[] rgba, int width, int height)
    {
        string path = Path.Combine(Folder, name + ".png");
        if (Environment.GetEnvironmentVariable("SIMFEEL_GOLDEN") == "write")
        {
            Directory.CreateDirectory(Folder);
            FrameCapture.WritePng(rgba, width, height, path);
            return;
        }
        Assert.True(File.Exists(path), $"There is no {path}; SIMFEEL_GOLDEN=write makes it.");
        byte[] golden = Read(path, width, height);
        (double mean, double far) = Difference(golden, rgba);
        if (mean < MostMean && far <= MostFarShare) return;
        string got = Path.Combine(Folder, name + ".got.png");
        FrameCapture.WritePng(rgba, width, height, got);
        Assert.Fail($"{name}: mean difference {mean:F2} of 255, {100 * far:F2} % of the pixels far off. The picture is at {got}.");
    }

    /// <summary>Mean absolute difference of the colours, and the share of pixels with a colour farther off than 24.</summary>
    public static (double Mean, double FarShare) Difference(byte[] a, byte[] b)
    {
        Assert.Equal(a.Length, b.Length);
        long sum = 0;
        int far = 0;
        for (int i = 0; i < a.Length; i += 4)
        {
            int worst = 0;
            for (int k = 0; k < 3; k++)
            {
                int d = Math.Abs(a[i + k] - b[i + k]);
                sum += d;
                worst = Math.Max(worst, d);
            }
            if (worst > Far) far++;
        }
        return (sum / (0.75 * a.Length), far / (a.Length / 4.0));
    }

    private static byte[] Read(string path, int width, int height)
    {
        using SKBitmap picture = SKBitmap.Decode(path, new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Unpremul));
        return picture.Bytes;
    }
}
