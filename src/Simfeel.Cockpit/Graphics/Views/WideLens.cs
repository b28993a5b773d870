namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>
/// A wide lens. At distance r from the middle (1 at the upper edge) the angle off the axis is between that of a straight
/// picture, atan(r tan(V/2)), and r V/2, the equidistant lens. Two straight pictures are drawn, turned left and right; each
/// is sharpest toward the middle of the whole, where a straight picture spends most of its pixels for nothing.
/// </summary>
internal readonly record struct WideLens
{
    // A little more than is needed at the seam and at the edges, in tangents.
    private const float Margin = 0.02f;

    /// <summary>Lays out the two pictures.</summary>
    /// <param name="field">Field of view from top to bottom, rad.</param>
    /// <param name="bend">0 straight, 1 equidistant.</param>
    /// <param name="width">Width of the whole picture, pixels.</param>
    /// <param name="height">Height of the whole picture, pixels.</param>
    /// <param name="sharpness">Pixels of the side pictures over those of the whole, in the middle.</param>
    public WideLens(double field, double bend, int width, int height, double sharpness = 1)
    {
        Aspect = (float)width / height;
        HalfField = field / 2;
        Bend = bend;
        WideLens self = this;
        double side = Angle(Aspect);
        Turn = side / 2;
        (double sin, double cos) = Math.SinCos(Turn);
        // The extent of the right picture, looked up along the border of the right half.
        double right = 0, top = 0;
        for (int k = 0; k <= 64; k++)
        {
            double share = k / 64.0;
            Reach(Aspect, share);
            Reach(Aspect * share, 1);
        }
        (Left, Right, Top) = ((float)-Math.Tan(Turn) - Margin, (float)right + Margin, (float)top + Margin);
        // As many pixels in the middle as the bent picture has there: tangents grow by 1/cos^2 off a picture's axis.
        double slope = double.Lerp(Math.Tan(HalfField), HalfField, bend);
        double perTangent = height / 2.0 / slope * cos * cos * sharpness;
        PictureWidth = Math.Min(2048, (int)(perTangent * (Right - Left)) + 1);
        PictureHeight = Math.Min(2048, (int)(perTangent * 2 * Top) + 1);

        void Reach(double x, double y)
        {
            double r = double.Hypot(x, y), angle = self.Angle(r), scale = r > 0 ? Math.Sin(angle) / r : 0;
            double across = x * scale, up = y * scale, ahead = Math.Cos(angle), depth = (ahead * cos) + (across * sin);
            right = Math.Max(right, ((across * cos) - (ahead * sin)) / depth);
            top = Math.Max(top, up / depth);
        }
    }

    /// <summary>Width over height of the whole picture.</summary>
    public float Aspect { get; }

    /// <summary>Half the field of view, rad.</summary>
    public double HalfField { get; }

    /// <summary>0 straight, 1 equidistant.</summary>
    public double Bend { get; }

    /// <summary>Turn of each side picture from the middle, rad.</summary>
    public double Turn { get; }

    /// <summary>Tangents that the right picture reaches to; the left one mirrors it.</summary>
    public float Left { get; }

    /// <inheritdoc cref="Left"/>
    public float Right { get; }

    /// <inheritdoc cref="Left"/>
    public float Top { get; }

    /// <summary>Pixels of one side picture.</summary>
    public int PictureWidth { get; }

    /// <inheritdoc cref="PictureWidth"/>
    public int PictureHeight { get; }

    /// <summary>Angle off the axis at a distance from the middle of the picture, rad; distance 1 is the upper edge.</summary>
    public double Angle(double distance) => double.Lerp(Math.Atan(distance * Math.Tan(HalfField)), distance * HalfField, Bend);

    /// <summary>Where a point of the whole lies in the right picture, 0 to 1 from its left and lower edge.</summary>
    /// <param name="x">From the middle to the right, 0 to <see cref="Aspect"/>.</param>
    /// <param name="y">From the middle upwards, -1 to 1.</param>
    public (float U, float V) Place(double x, double y)
    {
        double r = double.Hypot(x, y), angle = Angle(r), scale = r > 0 ? Math.Sin(angle) / r : 0;
        (double sin, double cos) = Math.SinCos(Turn);
        double side = x * scale, ahead = Math.Cos(angle), depth = (ahead * cos) + (side * sin);
        double across = ((side * cos) - (ahead * sin)) / depth, up = y * scale / depth;
        return ((float)((across - Left) / (Right - Left)), (float)(0.5 + (0.5 * up / Top)));
    }
}
