using System.Text;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Settings;

namespace Simfeel.Cockpit.Input;

/// <summary>An <see cref="ActionMap"/> as TOML text: keys by SDL's names, pad buttons by theirs.</summary>
public static class ActionMapFile
{
    /// <summary>Name of the file below the user's folder.</summary>
    public const string Name = "keys.toml";

    private const int Format = 1;

    /// <summary>A map as text.</summary>
    public static string Write(ActionMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        StringBuilder text = new();
        text.Append($"# Keys and pad buttons. W, S, A, D and the arrows fly and cannot be used here.\nformat = {Format}\n\n[keys]\n");
        foreach (PilotAction action in Enum.GetValues<PilotAction>())
            text.Append($"{TomlSheet.WordOf(action.ToString())} = {TomlSheet.Quoted(ActionMap.KeyName(map.KeyOf(action)))}\n");
        text.Append("\n[pad]\n");
        foreach (PilotAction action in Enum.GetValues<PilotAction>())
            text.Append($"{TomlSheet.WordOf(action.ToString())} = {TomlSheet.Quoted(map.PadOf(action).ToString())}\n");
        return text.ToString();
    }

    /// <summary>
    /// A map from text; what is wrong is said, one sentence each, and the default is kept. Two actions on one key are a
    /// mistake of the later one.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Name for the messages.</param>
    /// <param name="wrong">Receives one sentence for each mistake.</param>
    public static ActionMap Read(string text, string file, ICollection<string> wrong)
    {
        ArgumentNullException.ThrowIfNull(wrong);
        ActionMap map = new();
        TomlSheet sheet = new(text, file, wrong);
        if (!sheet.IsReadable) return map;
        sheet.CheckFormat(Format);
        Dictionary<int, PilotAction> keys = [];
        Dictionary<PadPress, PilotAction> pads = [];
        foreach (PilotAction action in Enum.GetValues<PilotAction>())
        {
            string word = TomlSheet.WordOf(action.ToString());
            ReadKey(sheet, map, action, "keys." + word, keys);
            ReadPad(sheet, map, action, "pad." + word, pads);
        }
        sheet.ReportUnknown();
        return map;
    }

    private static void ReadKey(TomlSheet sheet, ActionMap map, PilotAction action, string key, Dictionary<int, PilotAction> taken)
    {
        string name = sheet.Text(key, "");
        if (name.Length == 0) return;
        int scancode = Sdl.SDL_GetScancodeFromName(name);
        if (scancode == 0) sheet.Say(key, $"{key} is \"{name}\"; there is no key of that name. It is left where it was.");
        else if (taken.TryGetValue(scancode, out PilotAction other)) sheet.Say(key, $"{key} is \"{name}\", which {TomlSheet.WordOf(other.ToString())} already has. It is left where it was.");
        else if (!map.TrySetKey(action, scancode, out string said)) sheet.Say(key, $"{key} is \"{name}\": {said} It is left where it was.");
        else taken[scancode] = action;
    }

    private static void ReadPad(TomlSheet sheet, ActionMap map, PilotAction action, string key, Dictionary<PadPress, PilotAction> taken)
    {
        string name = sheet.Text(key, "");
        if (name.Length == 0) return;
        if (!PadPress.TryParse(name, out PadPress press)) sheet.Say(key, $"{key} is \"{name}\"; it must be a button such as \"x\" or \"leftshoulder+x\". It is left where it was.");
        else if (taken.TryGetValue(press, out PilotAction other)) sheet.Say(key, $"{key} is \"{name}\", which {TomlSheet.WordOf(other.ToString())} already has. It is left where it was.");
        else if (!map.TrySetPad(action, press, out string said)) sheet.Say(key, $"{key} is \"{name}\": {said} It is left where it was.");
        else taken[press] = action;
    }
}
