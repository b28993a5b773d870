using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>
/// The textures of a field, worked out in the background from construction on: they take most of the time until the first
/// picture, so they are begun before the window is opened. For one scene.
/// </summary>
public sealed class FieldPictures
{
    private const int LandSize = 1024;

    /// <summary>Begins to work them out.</summary>
    /// <param name="map">The field.</param>
    public FieldPictures(FieldMap map)
    {
        // the longest first
        Land = Task.Run(() => new LandTexture(map, LandSize));
        Lit = Land.ContinueWith(land => land.Result.Lit(), TaskScheduler.Default);
        Sky = Task.Run(SkyTexture.Pixels);
        Waves = Task.Run(GrainTextures.Waves);
        Grain = Task.Run(GrainTextures.Grain);
    }

    /// <summary>Land and coast.</summary>
    internal Task<LandTexture> Land { get; }

    /// <summary>Colour of the land as it is seen, for shaders that light nothing.</summary>
    internal Task<byte[]> Lit { get; }

    /// <inheritdoc cref="SkyTexture.Pixels"/>
    internal Task<byte[]> Sky { get; }

    /// <inheritdoc cref="GrainTextures.Waves"/>
    internal Task<byte[]> Waves { get; }

    /// <inheritdoc cref="GrainTextures.Grain"/>
    internal Task<byte[]> Grain { get; }
}
