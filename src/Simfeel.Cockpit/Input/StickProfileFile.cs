using System.Collections.Immutable;
using System.Text;
using Simfeel.Cockpit.Settings;

namespace Simfeel.Cockpit.Input;

/// <summary>
/// A <see cref="StickProfile"/> as TOML text. Reading never fails: what is wrong is said, one sentence each, and the value
/// of the profile that was given as default is used.
/// </summary>
public static class StickProfileFile
{
    private const int Format = 1;

    /// <summary>Name of a device's file below the user's folder.</summary>
    public static string NameFor(string guid) => $"sticks/{guid}.toml";

    /// <summary>A profile as text.</summary>
    public static string Write(StickProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        StringBuilder text = new();
        text.Append($"# How {TomlSheet.Plain(profile.Name)} is flown. Raw numbers are -32768 to 32767; axes count from 0.\n");
        text.Append($"format = {Format}\n");
        text.Append($"guid = {TomlSheet.Quoted(profile.Guid)}\n");
        text.Append($"name = {TomlSheet.Quoted(profile.Name)}\n");
        text.Append($"axes = {profile.AxisCount}\n");
        text.Append($"throttle_mode = {TomlSheet.Quoted(TomlSheet.WordOf(profile.ThrottleMode.ToString()))}\n");
        text.Append($"arm_follows_switch = {(profile.ArmFollowsSwitch ? "true" : "false")}\n");
        Append(text, "roll", profile.Roll);
        Append(text, "pitch", profile.Pitch);
        Append(text, "yaw", profile.Yaw);
        Append(text, "throttle", profile.Throttle);
        text.Append("\n[switches]\n");
        foreach ((PilotAction action, StickSwitch one) in profile.Switches.OrderBy(pair => pair.Key))
            text.Append($"{TomlSheet.WordOf(action.ToString())} = {TomlSheet.Quoted(one.ToString())}\n");
        return text.ToString();
    }

    /// <summary>A profile from text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Name for the messages.</param>
    /// <param name="otherwise">What holds where the text has nothing or something wrong.</param>
    /// <param name="wrong">Receives one sentence for each mistake.</param>
    public static StickProfile Read(string text, string file, StickProfile otherwise, ICollection<string> wrong)
    {
        ArgumentNullException.ThrowIfNull(otherwise);
        ArgumentNullException.ThrowIfNull(wrong);
        TomlSheet sheet = new(text, file, wrong);
        if (!sheet.IsReadable) return otherwise;
        sheet.CheckFormat(Format);
        StickProfile read = otherwise with
        {
            Guid = sheet.Text("guid", otherwise.Guid),
            Name = sheet.Text("name", otherwise.Name),
            AxisCount = sheet.Whole("axes", 1, 255, otherwise.AxisCount),
            ThrottleMode = sheet.Choice("throttle_mode", otherwise.ThrottleMode),
            ArmFollowsSwitch = sheet.Flag("arm_follows_switch", otherwise.ArmFollowsSwitch),
        };
        read = read with
        {
            Roll = Axis(sheet, "roll", read.AxisCount, otherwise.Roll),
            Pitch = Axis(sheet, "pitch", read.AxisCount, otherwise.Pitch),
            Yaw = Axis(sheet, "yaw", read.AxisCount, otherwise.Yaw),
            Throttle = Axis(sheet, "throttle", read.AxisCount, otherwise.Throttle),
            Switches = Switches(sheet),
        };
        sheet.ReportUnknown();
        if (SharedAxis(read) is (string one, string other, int axis))
        {
            sheet.Say(other + ".axis", $"{one} and {other} are both on axis {axis}; each needs its own. The default axes are used.");
            read = read with { Roll = otherwise.Roll, Pitch = otherwise.Pitch, Yaw = otherwise.Yaw, Throttle = otherwise.Throttle };
        }
        int most = new[] { read.Roll, read.Pitch, read.Yaw, read.Throttle }.Max(axis => axis.Axis);
        if (most >= read.AxisCount)
        {
            sheet.Say("axes", $"axes is {read.AxisCount}, and the sticks are on axes up to {most}; they count from 0. The default axes are used.");
            read = read with { AxisCount = otherwise.AxisCount, Roll = otherwise.Roll, Pitch = otherwise.Pitch, Yaw = otherwise.Yaw, Throttle = otherwise.Throttle };
        }
        return read;
    }

    private static void Append(StringBuilder text, string name, StickAxis axis)
    {
        text.Append($"\n[{name}]\n");
        text.Append($"axis = {axis.Axis}\n");
        text.Append($"low_raw = {axis.Low}\n");
        text.Append($"centre_raw = {axis.Centre}\n");
        text.Append($"high_raw = {axis.High}\n");
        text.Append($"inverted = {(axis.Inverted ? "true" : "false")}\n");
        text.Append($"deadband_raw = {axis.Deadband}\n");
    }

    private static StickAxis Axis(TomlSheet sheet, string name, int count, StickAxis otherwise)
    {
        StickAxis read = new()
        {
            Axis = sheet.Whole(name + ".axis", 0, count - 1, otherwise.Axis),
            Low = sheet.Whole(name + ".low_raw", short.MinValue, short.MaxValue, otherwise.Low),
            Centre = sheet.Whole(name + ".centre_raw", short.MinValue, short.MaxValue, otherwise.Centre),
            High = sheet.Whole(name + ".high_raw", short.MinValue, short.MaxValue, otherwise.High),
            Inverted = sheet.Flag(name + ".inverted", otherwise.Inverted),
            Deadband = sheet.Whole(name + ".deadband_raw", 0, short.MaxValue / 2, otherwise.Deadband),
        };
        if (read.Low < read.High && read.Centre >= read.Low && read.Centre <= read.High && read.High - read.Low > 4 * read.Deadband) return read;
        sheet.Say(
            name + ".low_raw",
            $"{name} goes from {read.Low} over {read.Centre} to {read.High} with a deadband of {read.Deadband}; low_raw, centre_raw and high_raw must rise, four deadbands apart. The default range is used.");
        return otherwise with { Axis = read.Axis, Inverted = read.Inverted };
    }

    private static ImmutableDictionary<PilotAction, StickSwitch> Switches(TomlSheet sheet)
    {
        ImmutableDictionary<PilotAction, StickSwitch>.Builder read = ImmutableDictionary.CreateBuilder<PilotAction, StickSwitch>();
        foreach (PilotAction action in Enum.GetValues<PilotAction>())
        {
            string key = "switches." + TomlSheet.WordOf(action.ToString());
            string text = sheet.Text(key, "");
            if (text.Length == 0) continue;
            if (StickSwitch.TryParse(text, out StickSwitch one)) read[action] = one;
            else sheet.Say(key, $"{key} is \"{text}\"; it must be like \"button 4\", \"hat 0 up\" or \"axis 5 above\". It is left out.");
        }
        return read.ToImmutable();
    }

    private static (string One, string Other, int Axis)? SharedAxis(StickProfile profile)
    {
        (string Name, int Axis)[] all =
            [("roll", profile.Roll.Axis), ("pitch", profile.Pitch.Axis), ("yaw", profile.Yaw.Axis), ("throttle", profile.Throttle.Axis)];
        for (int a = 0; a < all.Length; a++)
        {
            for (int b = a + 1; b < all.Length; b++)
            {
                if (all[a].Axis == all[b].Axis) return (all[a].Name, all[b].Name, all[a].Axis);
            }
        }
        return null;
    }
}
