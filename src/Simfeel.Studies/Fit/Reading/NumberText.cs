using System.Globalization;
using System.Text.RegularExpressions;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>Which marks the numbers of a table are written with.</summary>
/// <param name="Decimal">Decimal mark, <c>.</c> or <c>,</c>.</param>
/// <param name="Grouped">True where the other mark stands between thousands.</param>
internal readonly record struct NumberMarks(char Decimal, bool Grouped)
{
    public char Other => Decimal == '.' ? ',' : '.';
}

/// <summary>Numbers as people and spreadsheets write them.</summary>
internal static partial class NumberText
{
    /// <summary>True where a line is a comment.</summary>
    public static bool IsComment(string line)
    {
        string text = line.TrimStart(' ', '\t', '"', '\ufeff');
        return text.StartsWith('#') || text.StartsWith("//", StringComparison.Ordinal) || text.StartsWith('!');
    }

    /// <summary>True where a cell says that there is nothing to say.</summary>
    public static bool IsMissing(string cell) =>
        cell.Length == 0 || cell is "-" or "--" or "\u2013" or "\u2014" or "n/a" or "N/A" or "NA" or "na" or "k.A." or "/" or "x";

    /// <summary>True where a cell looks like a number, whatever its marks; a unit may follow.</summary>
    public static bool LooksNumeric(string cell) => Shape().IsMatch(cell);

    /// <summary>
    /// Finds the decimal mark from all cells. A mark that is followed by other than three digits, or by three after a
    /// leading zero, is a decimal mark; one that appears twice in a cell, or before the other one, groups thousands.
    /// </summary>
    /// <exception cref="FitException">The cells contradict each other, or nothing tells a decimal mark from one of thousands.</exception>
    public static NumberMarks Detect(IEnumerable<CellRow> rows, string source)
    {
        (int Line, string Cell)? pointDecimal = null, commaDecimal = null, pointGroups = null, commaGroups = null, commaUnclear = null, pointUnclear = null;
        foreach (CellRow row in rows)
        {
            foreach (string cell in row.Cells.Where(LooksNumeric))
            {
                string digits = Shape().Match(cell).Groups[1].Value;
                int point = digits.LastIndexOf('.'), comma = digits.LastIndexOf(',');
                if (point < 0 && comma < 0) continue;
                (int, string) here = (row.Line, cell);
                if (point >= 0 && comma >= 0)
                {
                    if (point > comma) (pointDecimal, commaGroups) = (pointDecimal ?? here, commaGroups ?? here);
                    else (commaDecimal, pointGroups) = (commaDecimal ?? here, pointGroups ?? here);
                    continue;
                }
                bool isPoint = point >= 0;
                bool repeated = digits.IndexOf(isPoint ? '.' : ',') != Math.Max(point, comma);
                if (repeated && isPoint) pointGroups ??= here;
                else if (repeated) commaGroups ??= here;
                else if (!MayGroup().IsMatch(digits))
                {
                    if (isPoint) pointDecimal ??= here;
                    else commaDecimal ??= here;
                }
                else if (isPoint) pointUnclear ??= here;
                else commaUnclear ??= here;
            }
        }
        if (pointDecimal is { } p && (commaDecimal ?? pointGroups) is { } c)
            throw new FitException(source, c.Line, $"The numbers are written in two ways: '{p.Cell}' in line {p.Line} and '{c.Cell}' here.", "write all with one decimal mark");
        if (commaDecimal is { } k && commaGroups is { } g)
            throw new FitException(source, g.Line, $"The comma is a decimal mark in '{k.Cell}' (line {k.Line}) and groups thousands in '{g.Cell}'.", "write all with one decimal mark");
        if (commaDecimal is not null || pointGroups is not null) return new(',', pointGroups is not null || pointUnclear is not null);
        if (pointDecimal is not null || commaGroups is not null) return new('.', commaGroups is not null || commaUnclear is not null);
        if (commaUnclear is { } u)
            throw new FitException(source, u.Line, $"Is '{u.Cell}' {u.Cell.Replace(',', '.')} or {u.Cell.Replace(",", "", StringComparison.Ordinal)}? Nothing in the table tells.", "say --decimal comma or --decimal point");
        return new('.', false);
    }

    /// <summary>The number in a cell and the unit behind it; NaN where it is none.</summary>
    public static (double Value, string Unit) Parse(string cell, NumberMarks marks)
    {
        Match match = Shape().Match(cell);
        if (!match.Success) return (double.NaN, "");
        string digits = match.Groups[1].Value;
        if (Blanks().Replace(digits, "") is string tight && tight != digits)
        {
            if (!BlankGroups().IsMatch(digits)) return (double.NaN, "");
            digits = tight;
        }
        if (digits.Contains(marks.Other))
        {
            if (!marks.Grouped || !Groups(marks.Other).IsMatch(digits)) return (double.NaN, "");
            digits = digits.Replace(marks.Other.ToString(), "", StringComparison.Ordinal);
        }
        digits = digits.Replace(marks.Decimal, '.').Replace('\u2212', '-');
        bool ok = double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value);
        return ok ? (value, match.Groups[2].Value.Trim()) : (double.NaN, "");
    }

    /// <summary>Digits behind the decimal mark; 0 where there are none or an exponent hides them.</summary>
    public static int Decimals(string cell, NumberMarks marks)
    {
        Match match = Shape().Match(cell);
        if (!match.Success) return 0;
        string digits = match.Groups[1].Value.TrimEnd();
        int at = digits.LastIndexOf(marks.Decimal);
        return at < 0 ? 0 : digits[(at + 1)..].TakeWhile(char.IsAsciiDigit).Count();
    }

    private static Regex Groups(char mark) => mark == ',' ? CommaGroups() : PointGroups();

    // a sign, digits with marks, blanks or apostrophes between, an exponent; then a unit that starts with a letter or sign; what was
    // taken is not given back, so that a long cell costs no more than its length
    [GeneratedRegex(@"^\s*((?>[+\-\u2212]?(?:[0-9][0-9.,'\u2019\u00a0\u202f ]*|[.,][0-9]+)(?:[eE][+-]?[0-9]+)?))\s*([a-zA-Z%\u00b5\u03bc][a-zA-Z%/\u00b7*\u00b2 ]{0,7})?\s*$")]
    private static partial Regex Shape();

    [GeneratedRegex(@"^[+\-\u2212]?[1-9][0-9]{0,2}[.,][0-9]{3}$")]
    private static partial Regex MayGroup();

    [GeneratedRegex(@"[\s'\u2019\u00a0\u202f]")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"^[+\-\u2212]?[0-9]{1,3}(?:[\s'\u2019\u00a0\u202f][0-9]{3})*(?:[.,][0-9]*)?\s*$|^\S+\s+$")]
    private static partial Regex BlankGroups();

    [GeneratedRegex(@"^[+\-\u2212]?[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]*)?$")]
    private static partial Regex CommaGroups();

    [GeneratedRegex(@"^[+\-\u2212]?[0-9]{1,3}(?:\.[0-9]{3})+(?:,[0-9]*)?$")]
    private static partial Regex PointGroups();
}
