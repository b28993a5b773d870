using System.Numerics;
using Simfeel.Builds;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>
/// Looks of the two builds: A blue with one white stripe, B orange with two cream ones, so that they differ to every eye
/// by hue and by marks.
/// </summary>
/// <param name="Colour">Top plate, bells and blades, linear.</param>
/// <param name="Stripe">Stripes, linear.</param>
/// <param name="Stripes">Number of stripes.</param>
internal sealed record Livery(Vector3 Colour, Vector3 Stripe, int Stripes)
{
    /// <summary>Looks by slot.</summary>
    public static Livery[] BySlot { get; } =
    [
        new(LinearColour.Of(0x4FA9E6), LinearColour.Of(0xF4F7FA), 1),
        new(LinearColour.Of(0xE08E35), LinearColour.Of(0xFBE9C6), 2),
    ];

    /// <summary>Blades of a propeller that struck something, linear.</summary>
    public static Vector3 Broken { get; } = LinearColour.Of(0x6E5F66);

    /// <summary>Colour of a group of parts in the mass view and on the craft, linear.</summary>
    public static Vector3 Of(PartKind group) => group switch
    {
        PartKind.Frame => LinearColour.Of(0x3A4047),
        PartKind.Motors => LinearColour.Of(0xA9AFB6),
        PartKind.Propellers => LinearColour.Of(0xF0E442),
        PartKind.Battery => LinearColour.Of(0x6D5BA8),
        PartKind.Electronics => LinearColour.Of(0x1F8A70),
        PartKind.Camera => LinearColour.Of(0x1D1F22),
        PartKind.Wiring => LinearColour.Of(0xC77B58),
        _ => LinearColour.Of(0xC9CCD0),
    };
}
