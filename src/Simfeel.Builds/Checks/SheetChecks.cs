using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds.Checks;

/// <summary>What a sheet must hold before anything can be made of it.</summary>
internal static class SheetChecks
{
    public static void Run(BuildSheet sheet, DiagnosticBag bag)
    {
        Version(sheet, bag);
        if (HoldsPropellerOnly(sheet))
        {
            bag.Error(null, "", "", "This file holds a propeller only; a build has a name and the tables [frame], [motor] and [battery], too.", "a propeller alone serves the wind tunnel: stand --propeller");
            return;
        }
        foreach (KeySpec key in BuildFormat.Keys.Where(k => k.Required && k.Table != "extra")) Need(sheet, bag, key.Path);
        Blades(sheet, bag);
        if (sheet.Positions.Count == 0 && sheet.PositionsAt is null) Need(sheet, bag, "frame.wheelbase_mm");
        if (sheet.Positions.Count > 0)
        {
            foreach (string ignored in (string[])["frame.layout", "frame.wheelbase_mm", "frame.aspect", "frame.sweep_deg"])
            {
                if (sheet.PlaceOf(ignored) is Place at && Given(sheet, ignored))
                    bag.Warning(at, ignored, "", "The rotor positions decide; this key is ignored.", "keep one of the two");
            }
        }
        Together(sheet, bag, "motor.no_load_current_A", "motor.no_load_voltage_V");
        Together(sheet, bag, "motor.no_load_voltage_V", "motor.no_load_current_A");
        if (Typical(sheet, "motor.poles") % 2 == 1)
            bag.Error(sheet.PlaceOf("motor.poles"), "motor.poles", sheet.Numbers["motor.poles"].Written, "Magnets come in pairs; allowed is an even whole number from 2 to 60.", "count the magnets of the bell");
        for (int i = 1; i <= sheet.ExtraCount; i++) Extra(sheet, bag, $"extra[{i}]");
        foreach (string axis in (string[])["roll", "pitch", "yaw"]) StickCurve(sheet, bag, axis);
    }

    /// <summary>What a file must hold that describes a propeller only.</summary>
    public static void RunPropeller(BuildSheet sheet, DiagnosticBag bag)
    {
        Version(sheet, bag);
        foreach (KeySpec key in BuildFormat.Keys.Where(k => k.Required && k.Table == "propeller")) Need(sheet, bag, key.Path);
        Blades(sheet, bag);
    }

    private static bool HoldsPropellerOnly(BuildSheet sheet) =>
        sheet.Tables.ContainsKey("propeller")
        && sheet.Tables.Keys.Concat(sheet.Numbers.Keys).Concat(sheet.Texts.Keys).All(k => k is "format" or "name" or "description" || k.Split('.')[0] == "propeller");

    /// <summary>Pitch and planform, or stations in their place.</summary>
    private static void Blades(BuildSheet sheet, DiagnosticBag bag)
    {
        const string scale = "propeller.chord_scale";
        if (sheet.StationsAt is null) Need(sheet, bag, "propeller.pitch_in");
        else if (Given(sheet, scale))
            bag.Warning(sheet.PlaceOf(scale), scale, sheet.Numbers[scale].Written, "The blade stations decide; this key is ignored.", "keep one of the two");
    }

    private static void Version(BuildSheet sheet, DiagnosticBag bag)
    {
        if (bag.Concerns("format")) return;
        if (!sheet.Numbers.TryGetValue("format", out GivenNumber? format))
            bag.Warning(null, "format", "", $"The file does not say its format; it is read as format {BuildFormat.Version}.", $"put format = {BuildFormat.Version} in the first line");
        else if (format.Typical > BuildFormat.Version)
            bag.Warning(format.At, "format", format.Written, $"The file is in a newer format; this program knows 1 to {BuildFormat.Version} and reads what it knows.", "keys that it does not know are named below");
    }

    private static void Need(BuildSheet sheet, DiagnosticBag bag, string key)
    {
        // A value that was refused has its own message already.
        if (Given(sheet, key) || bag.Concerns(key)) return;
        KeySpec spec = BuildFormat.Find(key)!;
        string hint = spec.Table.Length > 0 ? $"write it below [{spec.Table}]" : "write it at the top of the file";
        bag.Error(sheet.PlaceOf(key), key, "", $"This key is missing ({spec.Meaning}); allowed is {spec.Range}.", hint);
    }

    private static void Together(BuildSheet sheet, DiagnosticBag bag, string given, string other)
    {
        if (!Given(sheet, given) || Given(sheet, other) || bag.Concerns(other)) return;
        bag.Error(sheet.PlaceOf(given), given, sheet.Numbers[given].Written, $"{other} is missing; the two go together; allowed is {BuildFormat.Find(other)!.Range}.", "give both or none");
    }

    private static void Extra(BuildSheet sheet, DiagnosticBag bag, string table)
    {
        string shape = sheet.Texts.TryGetValue(table + ".shape", out GivenText? text) ? text.Value : "point";
        string[] edges = shape switch
        {
            "box" => ["length", "width", "height"],
            "cylinder" => ["diameter", "height"],
            "rod" => ["length"],
            "sphere" => ["diameter"],
            _ => [],
        };
        NeedOfExtra("mass_g", "");
        foreach (string edge in edges) NeedOfExtra(edge + "_mm", $" of a {shape}");

        void NeedOfExtra(string key, string of)
        {
            string path = $"{table}.{key}";
            if (Given(sheet, path) || bag.Concerns(path)) return;
            KeySpec spec = BuildFormat.Find(path)!;
            bag.Error(sheet.Tables[table], path, "", $"The {spec.Meaning.Split(',')[0]}{of} is missing; allowed is {spec.Range}.", "write it below this [[extra]]");
        }
    }

    private static void StickCurve(BuildSheet sheet, DiagnosticBag bag, string axis)
    {
        string centreKey = $"pilot.{axis}_centre_deg_s", endKey = $"pilot.{axis}_end_deg_s";
        double centre = Typical(sheet, centreKey), end = Typical(sheet, endKey);
        if (centre <= end) return;
        string key = Given(sheet, endKey) ? endKey : centreKey;
        bag.Error(sheet.PlaceOf(key), key, sheet.Numbers[key].Written, $"The rate at full stick, {end:G6} deg/s, is less than {centreKey}, {centre:G6} deg/s; allowed is {centre:G6} to 3000 deg/s.", "a stick curve gets steeper outward");
    }

    private static double Typical(BuildSheet sheet, string key) =>
        sheet.Numbers.TryGetValue(key, out GivenNumber? number) ? number.Typical : BuildFormat.Find(key)!.Default!.Value;

    private static bool Given(BuildSheet sheet, string key) => sheet.Numbers.ContainsKey(key) || sheet.Texts.ContainsKey(key);
}
