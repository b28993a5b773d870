using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Input;

/// <summary>The stick profiles of a user's folder: one file for each device.</summary>
/// <param name="folder">The user's folder.</param>
/// <param name="wrong">Receives one sentence for each mistake in a file.</param>
public sealed class StickShelf(UserFolder folder, ICollection<string> wrong)
{
    /// <summary>
    /// The stored profile of a device, else that of a known gamepad, else null: then the wizard has to find out.
    /// </summary>
    public StickProfile? Find(StickDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        StickProfile? pad = device.Pad?.Profile(device);
        string name = StickProfileFile.NameFor(device.Guid);
        if (!folder.TryRead(name, out string text, out string problem))
        {
            if (problem.Length > 0) wrong.Add(problem);
            return pad;
        }
        StickProfile? otherwise = pad ?? Plain(device);
        if (otherwise is null) return null;
        StickProfile read = StickProfileFile.Read(text, name, otherwise, wrong);
        if (read.Fits(device)) return read;
        wrong.Add($"{name} is of \"{read.Name}\" with {read.AxisCount} axes, not of \"{device.Name}\" with {device.Axes.Length}; it is left out.");
        return pad;
    }

    /// <summary>Stores a profile.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="problem">What is wrong, in one sentence; empty where nothing is.</param>
    public bool TrySave(StickProfile profile, out string problem)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return folder.TryWrite(StickProfileFile.NameFor(profile.Guid), StickProfileFile.Write(profile), out problem);
    }

    /// <summary>What a broken file of a device with unknown layout is filled up from: its first four axes, full range.</summary>
    internal static StickProfile? Plain(StickDevice device) => device.Axes.Length < 4 ? null : new()
    {
        Guid = device.Guid,
        Name = device.Name,
        AxisCount = device.Axes.Length,
        Roll = new() { Axis = 0 },
        Pitch = new() { Axis = 1 },
        Throttle = new() { Axis = 2 },
        Yaw = new() { Axis = 3 },
    };
}
