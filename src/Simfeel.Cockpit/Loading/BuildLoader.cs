using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Physics.Air;

namespace Simfeel.Cockpit.Loading;

/// <summary>Finds builds by name or path and makes them ready to fly. Nothing that a user can write makes it throw.</summary>
public static class BuildLoader
{
    /// <summary>A build by its name on a shelf or by its path, ready to fly; else all that is wrong with it.</summary>
    /// <param name="nameOrPath">Name or path.</param>
    /// <param name="shelf">The builds that have names.</param>
    /// <param name="air">The air that it will fly in.</param>
    /// <param name="profile">The pilot that it is tuned for.</param>
    public static FlyableResult Load(string nameOrPath, BuildShelf shelf, AirState air, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        return shelf.PathOf(nameOrPath) is string path
            ? FlyableBuild.Read(path, air, profile)
            : new(null, $"There is no file and no build called '{nameOrPath}'. Builds: {string.Join(", ", shelf.Names)}.");
    }
}
