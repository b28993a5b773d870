using Simfeel.Builds;
using Simfeel.Cockpit.Application.Blind;
using Simfeel.Flight;
using Simfeel.Physics.Air;

namespace Simfeel.Cockpit.Application;

/// <summary>What the window is opened with.</summary>
public sealed record CockpitOptions
{
    /// <summary>Builds that can be picked by name.</summary>
    public BuildShelf Shelf { get; init; } = BuildShelf.Starters;

    /// <summary>First build, a file or a name; null for the one flown last.</summary>
    public string? A { get; init; }

    /// <summary>Second build; null for the one flown last.</summary>
    public string? B { get; init; }

    /// <summary>Go to the field at once instead of the start page.</summary>
    public bool StraightToTheField { get; init; }

    /// <summary>Field file.</summary>
    public required string FieldFile { get; init; }

    /// <summary>Air of the site.</summary>
    public AirState Air { get; init; } = StandardAtmosphere.At(0);

    /// <summary>Effects of moving air, seed.</summary>
    public FieldConditions Conditions { get; init; } = new();

    /// <summary>File that flights are recorded to; null for none.</summary>
    public string? Record { get; init; }

    /// <summary>Trace to fly again; null for a live flight.</summary>
    public string? Replay { get; init; }

    /// <summary>Blind flights with the two builds at once; null for open ones.</summary>
    public BlindOptions? Blind { get; init; }

    /// <summary>Folder for pictures.</summary>
    public required string PictureFolder { get; init; }

    /// <summary>No sound, and no question for a device.</summary>
    public bool Silent { get; init; }

    /// <summary>Size of the window, pixels.</summary>
    public (int Width, int Height) Size { get; init; } = (1280, 720);
}
