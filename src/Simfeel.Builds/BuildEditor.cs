using System.Globalization;
using Simfeel.Builds.Estimates;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds;

/// <summary>
/// Changes single keys of a build. What the file left out is estimated anew from the changed numbers, so a larger
/// stator brings its mass with it unless the file states the mass.
/// </summary>
public static class BuildEditor
{
    /// <summary>The build with numbers changed.</summary>
    /// <param name="build">A build that was read or edited, not a hybrid.</param>
    /// <param name="changes">Full key, such as <c>motor.stator_height_mm</c> or <c>extra[1].mass_g</c>, and new value in the key's unit; flags are 0 and 1.</param>
    /// <returns>The new build, or diagnostics with the allowed range where a value is refused or a key unknown.</returns>
    /// <exception cref="ArgumentException">The build is a hybrid.</exception>
    public static BuildResult Edit(Build build, params IEnumerable<KeyValuePair<string, double>> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        BuildSheet sheet = SheetOf(build);
        DiagnosticBag bag = new(sheet.SourceName);
        foreach ((string key, double value) in changes)
        {
            string written = value.ToString("R", CultureInfo.InvariantCulture);
            KeySpec? spec = Find(sheet, key);
            if (spec is null || spec.Kind is not (KeyKind.Number or KeyKind.Count or KeyKind.Flag))
                Unknown(bag, key, written, k => k.Kind is KeyKind.Number or KeyKind.Count or KeyKind.Flag);
            else if (NumberReader.RangeFault(spec, value) is string fault)
                bag.Error(null, key, written, fault);
            else
                sheet = sheet with { Numbers = sheet.Numbers.SetItem(key, new(value, value, value, ValueSource.Edited, null, written)) };
        }
        return Make(sheet, bag);
    }

    /// <summary>The build with one number changed; see <see cref="Edit(Build, IEnumerable{KeyValuePair{string, double}})"/>.</summary>
    public static BuildResult Edit(Build build, string key, double value) => Edit(build, [new(key, value)]);

    /// <summary>The build with one word changed, such as <c>frame.layout</c>.</summary>
    /// <exception cref="ArgumentException">The build is a hybrid.</exception>
    public static BuildResult Edit(Build build, string key, string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        BuildSheet sheet = SheetOf(build);
        DiagnosticBag bag = new(sheet.SourceName);
        KeySpec? spec = Find(sheet, key);
        if (spec is null || spec.Kind is not (KeyKind.Text or KeyKind.Choice))
            Unknown(bag, key, word, k => k.Kind is KeyKind.Text or KeyKind.Choice);
        else if (spec.Kind == KeyKind.Choice && !spec.Choices.Contains(word))
            bag.Error(null, key, $"\"{word}\"", $"Allowed is {spec.Range}.");
        else
            sheet = sheet with { Texts = sheet.Texts.SetItem(key, new(word, null)) };
        return Make(sheet, bag);
    }

    /// <summary>
    /// The build with numbers changed as if parts had been swapped on the finished craft: what was weighed and measured on it is kept as
    /// the difference to the sum of its parts, so that a heavier part makes a heavier craft.
    /// </summary>
    /// <param name="build">A build that was read or edited, not a hybrid.</param>
    /// <param name="changes">As for <see cref="Edit(Build, IEnumerable{KeyValuePair{string, double}})"/>.</param>
    /// <exception cref="ArgumentException">The build is a hybrid.</exception>
    public static BuildResult Swap(Build build, params IEnumerable<KeyValuePair<string, double>> changes)
    {
        BuildSheet sheet = SheetOf(build);
        const string wiring = "stack.wiring_mass_g";
        double grams = build.Stack.WiringMass * 1e3;
        // without rounding: the unchanged build must come out the same bit for bit
        sheet = sheet with
        {
            Numbers = sheet.Numbers
                .RemoveRange(sheet.Numbers.Keys.Where(key => key.StartsWith("measured.", StringComparison.Ordinal)))
                .SetItem(wiring, new(grams, grams, grams, ValueSource.Edited, null, grams.ToString("R", CultureInfo.InvariantCulture))),
        };
        BuildResult result = Edit(build with { Sheet = sheet }, changes);
        return result.Build is Build swapped
            ? result with { Build = swapped with { Measured = build.Measured, Stack = swapped.Stack with { WiringMass = build.Stack.WiringMass } } }
            : result;
    }

    private static BuildResult Make(BuildSheet sheet, DiagnosticBag bag)
    {
        Build? build = bag.HasErrors ? null : BuildFactory.Make(sheet, bag);
        return new(build, bag.InOrder());
    }

    internal static BuildSheet SheetOf(Build build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build.Sheet ?? throw new ArgumentException("A hybrid of two builds has no keys to edit.", nameof(build));
    }

    private static KeySpec? Find(BuildSheet sheet, string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        if (!key.StartsWith("extra", StringComparison.Ordinal)) return BuildFormat.Find(key);
        int open = key.IndexOf('[', StringComparison.Ordinal), close = key.IndexOf(']', StringComparison.Ordinal);
        bool numbered = open == 5 && close > open
            && int.TryParse(key.AsSpan(open + 1, close - open - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number >= 1 && number <= sheet.ExtraCount;
        return numbered ? BuildFormat.Find(key) : null;
    }

    private static void Unknown(DiagnosticBag bag, string key, string value, Func<KeySpec, bool> fits)
    {
        string? near = NearestName.Of(key, BuildFormat.Keys.Where(fits).Select(k => k.Path));
        bag.Error(null, key, value, "There is no such key to change.", near is null ? "" : $"did you mean {near}?");
    }
}
