using System.Globalization;

namespace Simfeel.Cockpit.Input;

/// <summary>What a <see cref="StickSwitch"/> looks at.</summary>
public enum StickSwitchKind
{
    /// <summary>A button.</summary>
    Button,

    /// <summary>One direction of a hat.</summary>
    Hat,

    /// <summary>An axis in its upper part; transmitters send their switches so.</summary>
    AxisAbove,

    /// <summary>An axis in its lower part.</summary>
    AxisBelow,
}

/// <summary>Something of a device that is on or off.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Number">Number of the button, hat or axis, from 0.</param>
/// <param name="Direction">Bit of a hat: up 1, right 2, down 4, left 8; 0 for others.</param>
public readonly record struct StickSwitch(StickSwitchKind Kind, int Number, int Direction = 0)
{
    /// <summary>Raw number that an axis passes to count as switched: a quarter of the way from the middle.</summary>
    public const int Threshold = 8192;

    private static readonly string[] Directions = ["up", "right", "down", "left"];

    /// <summary>Whether it is on.</summary>
    public bool IsOn(StickDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        return Kind switch
        {
            StickSwitchKind.Button => Number < device.Buttons.Length && device.Buttons[Number],
            StickSwitchKind.Hat => Number < device.Hats.Length && (device.Hats[Number] & Direction) != 0,
            StickSwitchKind.AxisAbove => Number < device.Axes.Length && device.Axes[Number] > Threshold,
            _ => Number < device.Axes.Length && device.Axes[Number] < -Threshold,
        };
    }

    /// <summary>As it stands in a file and on a page: <c>button 4</c>, <c>hat 0 up</c>, <c>axis 5 above</c>.</summary>
    public override string ToString() => Kind switch
    {
        StickSwitchKind.Button => string.Create(CultureInfo.InvariantCulture, $"button {Number}"),
        StickSwitchKind.Hat => string.Create(CultureInfo.InvariantCulture, $"hat {Number} {Directions[int.Log2(Math.Clamp(Direction, 1, 8))]}"),
        StickSwitchKind.AxisAbove => string.Create(CultureInfo.InvariantCulture, $"axis {Number} above"),
        _ => string.Create(CultureInfo.InvariantCulture, $"axis {Number} below"),
    };

    /// <summary>Reads what <see cref="ToString"/> writes.</summary>
    public static bool TryParse(string text, out StickSwitch one)
    {
        one = default;
        string[] words = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length is < 2 or > 3 || !int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number > 255) return false;
        int direction = words.Length == 3 ? Array.IndexOf(Directions, words[2]) : -1;
        switch (words[0])
        {
            case "button" when words.Length == 2:
                one = new(StickSwitchKind.Button, number);
                return true;
            case "hat" when direction >= 0:
                one = new(StickSwitchKind.Hat, number, 1 << direction);
                return true;
            case "axis" when words.Length == 3 && words[2] is "above" or "below":
                one = new(words[2] == "above" ? StickSwitchKind.AxisAbove : StickSwitchKind.AxisBelow, number);
                return true;
            default:
                return false;
        }
    }
}
