using System.Globalization;
using Simfeel.Builds;
using Simfeel.Cockpit.Drawing;
using Tomlyn;
using Tomlyn.Model;

namespace Simfeel.Cockpit.Settings;

/// <summary>
/// Settings as TOML text, one key a line. Reading never fails: what is wrong is said, one sentence each, and its default
/// is used; the file itself is left as it is until settings are next stored.
/// </summary>
public static class SettingsFile
{
    /// <summary>Name of the file in the user's folder.</summary>
    public const string Name = "settings.toml";

    private const int Format = 1;

    private static readonly Entry[] Entries =
    [
        Entry.Text("build_a", s => s.BuildA, (s, v) => s.BuildA = v),
        Entry.Text("build_b", s => s.BuildB, (s, v) => s.BuildB = v),
        Entry.Choice("quality", s => s.Quality, (s, v) => s.Quality = v),
        Entry.Number("text_scale", "", TextScale.Low, TextScale.High, s => s.TextScale, (s, v) => s.TextScale = v),
        Entry.Choice("palette", s => s.Palette, (s, v) => s.Palette = v),
        Entry.Flag("hold_at_marks", s => s.HoldAtMarks, (s, v) => s.HoldAtMarks = v),
        Entry.Choice("view", s => s.View, (s, v) => s.View = v),
        Entry.Number("camera_tilt_deg", "deg", 0, 80, s => s.CameraTilt_deg, (s, v) => s.CameraTilt_deg = v),
        Entry.Number("field_of_view_deg", "deg", 30, 140, s => s.FieldOfView_deg, (s, v) => s.FieldOfView_deg = v),
        Entry.Flag("true_scale", s => s.TrueScale, (s, v) => s.TrueScale = v),
        Entry.Number("screen_height_mm", "mm", 40, 3000, s => s.ScreenHeight_mm, (s, v) => s.ScreenHeight_mm = v),
        Entry.Number("eye_distance_mm", "mm", 40, 10000, s => s.EyeDistance_mm, (s, v) => s.EyeDistance_mm = v),
        Entry.Number("wide_lens", "", 0, 1, s => s.WideLens, (s, v) => s.WideLens = v),
        Entry.Number("sound_gain", "", 0, 1, s => s.SoundGain, (s, v) => s.SoundGain = v),
        Entry.Number("radio_delay_ms", "ms", 0, 200, s => s.RadioDelay_ms, (s, v) => s.RadioDelay_ms = v),
        Entry.Number("video_delay_ms", "ms", 0, 300, s => s.VideoDelay_ms, (s, v) => s.VideoDelay_ms = v),
        Entry.Number("frame_rate_Hz", "Hz", 20, 360, s => s.FrameRate_Hz, (s, v) => s.FrameRate_Hz = v),
        Entry.Flag("kilometres_per_hour", s => s.KilometresPerHour, (s, v) => s.KilometresPerHour = v),
        Entry.Flag("show_numbers", s => s.ShowNumbers, (s, v) => s.ShowNumbers = v),
        Entry.Flag("full_screen", s => s.FullScreen, (s, v) => s.FullScreen = v),
    ];

    /// <summary>Settings as text.</summary>
    public static string Write(CockpitSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        TomlTable table = new() { ["format"] = (long)Format };
        foreach (Entry entry in Entries) table[entry.Key] = entry.Write(settings);
        return TomlSerializer.Serialize(table);
    }

    /// <summary>Settings as text for a file that another window may have stored into meanwhile: what was set in this one, else what stands there.</summary>
    /// <param name="mine">The settings of this window.</param>
    /// <param name="before">The same as text, when this window last read or stored them.</param>
    /// <param name="there">What the file holds now; empty for no file.</param>
    public static string Write(CockpitSettings mine, string before, string there)
    {
        if (there.Length == 0) return Write(mine);
        CockpitSettings old = Read(before, "", []), merged = Read(there, "", []);
        foreach (Entry entry in Entries)
        {
            if (!entry.Write(mine).Equals(entry.Write(old))) entry.Read(merged, entry.Write(mine));
        }
        return Write(merged);
    }

    /// <summary>Settings from text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Name for the messages.</param>
    /// <param name="wrong">Receives one sentence for each mistake.</param>
    public static CockpitSettings Read(string text, string file, ICollection<string> wrong)
    {
        ArgumentNullException.ThrowIfNull(wrong);
        CockpitSettings settings = new();
        // says with its line what the library below takes without a word, such as a key that is given twice
        if (!new TomlSheet(text, file, wrong).IsReadable) return settings;
        TomlTable table;
        try
        {
            table = TomlSerializer.Deserialize<TomlTable>(text) ?? [];
        }
        catch (TomlException error)
        {
            wrong.Add(OneLine.Of($"{file}: {error.Message} Defaults are used."));
            return settings;
        }
        foreach ((string key, object value) in table)
        {
            if (key == "format")
            {
                if (value is not (long)Format)
                    wrong.Add(OneLine.Of($"{file}: format is {Show(value)}; this version writes {Format} and reads what it knows."));
            }
            else if (Entries.FirstOrDefault(entry => entry.Key == key) is not Entry known)
            {
                wrong.Add(OneLine.Of($"{file}: there is no setting called {key}; it is left out."));
            }
            else if (!known.Read(settings, value))
            {
                wrong.Add(OneLine.Of($"{file}: {key} is {Show(value)}; it must be {known.Allowed}. The default is used."));
            }
        }
        return settings;
    }

    private static string Show(object value) =>
        value is TomlTable or TomlArray or TomlTableArray ? "a table or list" : Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";

    /// <summary>One key: what it may be, and how it is read and written.</summary>
    private sealed record Entry(string Key, string Allowed, Func<CockpitSettings, object, bool> Read, Func<CockpitSettings, object> Write)
    {
        public static Entry Number(
            string key, string unit, double low, double high, Func<CockpitSettings, double> get, Action<CockpitSettings, double> set) =>
            new(
                key,
                string.Create(CultureInfo.InvariantCulture, $"a number from {low} to {high} {unit}").TrimEnd(),
                (settings, value) =>
                {
                    double number = value switch { long whole => whole, double real => real, _ => double.NaN };
                    if (!(number >= low && number <= high)) return false;
                    set(settings, number);
                    return true;
                },
                settings => get(settings));

        public static Entry Flag(string key, Func<CockpitSettings, bool> get, Action<CockpitSettings, bool> set) =>
            new(
                key,
                "true or false",
                (settings, value) =>
                {
                    if (value is not bool flag) return false;
                    set(settings, flag);
                    return true;
                },
                settings => get(settings));

        public static Entry Choice<T>(string key, Func<CockpitSettings, T> get, Action<CockpitSettings, T> set)
            where T : struct, Enum =>
            new(
                key,
                string.Join(", ", Enum.GetNames<T>()).ToLowerInvariant(),
                (settings, value) =>
                {
                    if (value is not string word || !Enum.GetNames<T>().Contains(word, StringComparer.OrdinalIgnoreCase)) return false;
                    set(settings, Enum.Parse<T>(word, ignoreCase: true));
                    return true;
                },
                settings => get(settings).ToString().ToLowerInvariant());

        public static Entry Text(string key, Func<CockpitSettings, string> get, Action<CockpitSettings, string> set) =>
            new(
                key,
                "a text",
                (settings, value) =>
                {
                    if (value is not string word) return false;
                    set(settings, word);
                    return true;
                },
                get);
    }
}
