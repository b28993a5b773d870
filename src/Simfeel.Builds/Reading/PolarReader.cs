using System.Collections.Immutable;
using System.Globalization;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Reading;

/// <summary>
/// Reads a section polar: comma-separated text with the header <c>angle_deg,reynolds,lift,drag</c> (columns in any
/// order), one row for each pair of angle and Reynolds number, rows in any order, <c>#</c> before comments.
/// </summary>
internal sealed class PolarReader
{
    private const int FewestAngles = 2, MostAngles = 400, MostReynolds = 40;
    private const int MostFindings = 20;
    private const int MostColumns = 100;

    private static readonly string[] LineEnds = ["\r\n", "\n", "\r"];

    private static readonly Column[] Columns =
    [
        new("angle_deg", -180, 180, "-180 to 180 deg"),
        new("reynolds", 1e3, 1e8, "1000 to 100000000"),
        new("lift", -5, 5, "-5 to 5"),
        new("drag", 1e-6, 5, "above 0 to 5"),
    ];

    private readonly DiagnosticBag _bag;
    private readonly Dictionary<(double Angle, double Reynolds), (SectionCoefficients Value, int Line)> _rows = [];
    private int _width;
    private int _findings;

    private PolarReader(DiagnosticBag bag) => _bag = bag;

    /// <summary>The polar, or null with diagnostics.</summary>
    public static TabulatedPolar? Read(string text, DiagnosticBag bag)
    {
        PolarReader reader = new(bag);
        int[]? order = null;
        int number = 0;
        // lines as an editor counts them: a separator that only Unicode knows ends none
        foreach (string raw in text.Split(LineEnds, StringSplitOptions.None))
        {
            number++;
            string line = raw.Split('#', 2)[0].Trim();
            if (line.Length == 0) continue;
            string[] fields = line.Split(',', StringSplitOptions.TrimEntries);
            if (order is not null)
            {
                reader.Row(line, fields, order, number);
            }
            else
            {
                order = reader.Header(line, fields, number);
                if (order is null) return null;
            }
        }
        if (order is null) bag.Error(null, "", "", "The file has no header line.", "the first line is angle_deg,reynolds,lift,drag");
        return bag.HasErrors ? null : reader.Grid();
    }

    /// <summary>Where in a row each of <see cref="Columns"/> stands; null with a diagnostic where one is missing.</summary>
    private int[]? Header(string line, string[] names, int number)
    {
        if (names.Length == 1 && line.AsSpan().IndexOfAny(';', '\t') >= 0)
        {
            _bag.Error(new(number, 1), "", "", $"The columns are parted by {(line.Contains(';', StringComparison.Ordinal) ? "semicolons" : "tabs")}; in a polar they are parted by commas.", "write angle_deg,reynolds,lift,drag and numbers with a decimal point");
            return null;
        }
        if (names.Length > MostColumns)
        {
            _bag.Error(new(number, 1), "", "", $"The header names {names.Length} columns; allowed are 4 to {MostColumns}.", "the first line is angle_deg,reynolds,lift,drag");
            return null;
        }
        foreach (string name in names)
        {
            if (Columns.Any(c => c.Name == name)) continue;
            string? near = NearestName.Of(name, Columns.Select(c => c.Name).Except(names));
            _bag.Warning(new(number, 1), name, "", "There is no such column; it is ignored.", near is null ? "" : $"did you mean {near}?");
        }
        _width = names.Length;
        int[] order = [.. Columns.Select(c => Array.IndexOf(names, c.Name))];
        for (int n = 0; n < Columns.Length; n++)
        {
            if (order[n] < 0)
                _bag.Error(new(number, 1), Columns[n].Name, "", "The header lacks this column; it names angle_deg, reynolds, lift and drag in any order.", "the first line is angle_deg,reynolds,lift,drag");
            else if (names.Count(name => name == Columns[n].Name) > 1)
                _bag.Error(new(number, 1), Columns[n].Name, "", "The header names this column twice.", "keep one of them");
        }
        return _bag.HasErrors ? null : order;
    }

    private void Row(string line, string[] fields, int[] order, int number)
    {
        if (fields.Length != _width)
        {
            string hint = line.Contains(';', StringComparison.Ordinal) ? "part the columns by commas" : fields.Length > _width ? "write a decimal point, not a comma" : "";
            Fault(number, "", line, $"The row has {fields.Length} values, the header {_width} columns.", hint);
            return;
        }
        double[] numbers = new double[Columns.Length];
        for (int n = 0; n < numbers.Length; n++)
        {
            string field = fields[order[n]];
            Column column = Columns[n];
            if (!double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[n]) || !double.IsFinite(numbers[n]))
            {
                Fault(number, column.Name, field, $"This is no number; allowed is {column.Range}.", "");
                return;
            }
            if (numbers[n] >= column.Least && numbers[n] <= column.Most) continue;
            Fault(number, column.Name, field, $"This is too {(numbers[n] < column.Least ? "small" : "large")}; allowed is {column.Range}.", "");
            return;
        }
        // Adding 0 turns -0 into 0, which else would count as an angle of its own.
        (double, double) at = (numbers[0] + 0.0, numbers[1]);
        if (_rows.TryGetValue(at, out (SectionCoefficients Value, int Line) other))
            Fault(number, "angle_deg", fields[order[0]], $"The pair of {numbers[0]:G6} deg and Reynolds number {numbers[1]:G6} is given twice; the first time in line {other.Line}.", "keep one of them");
        else
            _rows.Add(at, (new(numbers[2], numbers[3]), number));
    }

    private void Fault(int line, string key, string value, string message, string hint)
    {
        if (++_findings <= MostFindings) _bag.Error(new(line, 1), key, value, message, hint);
    }

    private TabulatedPolar? Grid()
    {
        double[] angles = [.. _rows.Keys.Select(k => k.Angle).Distinct().Order()];
        double[] reynolds = [.. _rows.Keys.Select(k => k.Reynolds).Distinct().Order()];
        if (angles.Length is < FewestAngles or > MostAngles)
            _bag.Error(null, "angle_deg", "", $"The file has {Counted(angles.Length, "angle")}; allowed are {FewestAngles} to {MostAngles}.");
        else if (reynolds.Length > MostReynolds)
            _bag.Error(null, "reynolds", "", $"The file has {Counted(reynolds.Length, "Reynolds number")}; allowed are 1 to {MostReynolds}.");
        else
            MissingAndOpen(angles, reynolds);
        if (_bag.HasErrors) return null;
        return new(
            [.. angles.Select(Radians)],
            reynolds,
            [.. reynolds.Select(re => angles.Select(a => _rows[(a, re)].Value.Lift).ToImmutableArray())],
            [.. reynolds.Select(re => angles.Select(a => _rows[(a, re)].Value.Drag).ToImmutableArray())]);

        // Half a turn in degrees must not round to more than pi.
        static double Radians(double degrees) => Math.Clamp(degrees * Math.PI / 180, -Math.PI, Math.PI);
    }

    private static string Counted(int count, string what) => count switch
    {
        0 => "no " + what,
        1 => "only one " + what,
        _ => $"{count} different {what}s",
    };

    /// <summary>Every pair must be there, and a table of the whole turn must close.</summary>
    private void MissingAndOpen(double[] angles, double[] reynolds)
    {
        List<(double Angle, double Reynolds)> missing = [.. reynolds.SelectMany(re => angles.Select(a => (a, re))).Where(at => !_rows.ContainsKey(at))];
        if (missing.Count > 0)
        {
            string more = missing.Count > 1 ? $" and {missing.Count - 1} more" : "";
            _bag.Error(null, "angle_deg", $"{missing[0].Angle:G6}", $"The row of {missing[0].Angle:G6} deg at Reynolds number {missing[0].Reynolds:G6} is missing{more}; every angle needs a row at every Reynolds number.", "add the row, or leave that angle out everywhere");
            return;
        }
        if (angles[0] != -180 || angles[^1] != 180) return;
        foreach (double re in reynolds)
        {
            ((SectionCoefficients start, _), (SectionCoefficients end, int line)) = (_rows[(-180, re)], _rows[(180, re)]);
            if (start == end) continue;
            _bag.Error(new(line, 1), "angle_deg", "180", $"-180 and 180 deg are the same flow, but lift and drag differ at Reynolds number {re:G6}.", "give both the same values, or leave one out");
            return;
        }
    }

    private sealed record Column(string Name, double Least, double Most, string Range);
}
