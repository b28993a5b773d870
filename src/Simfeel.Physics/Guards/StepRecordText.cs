using System.Globalization;
using System.Text;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Guards;

/// <summary>A <see cref="StepRecord"/> as lines <c>key = value</c>.</summary>
internal static class StepRecordText
{
    private const string Format = "simfeel_fault", Cell = "cell";

    public static string Write(StepRecord record)
    {
        StringBuilder text = new();
        text.Append("# One step of one craft that broke an invariant. Fly it again: ./simfeel doctor --repro THIS_FILE\n");
        foreach ((string key, string value) in Heads(record)) text.Append(key).Append(" = ").Append(value).Append('\n');
        text.Append("# constants, air, state, derivative of the step before, commands; SI units\n");
        IReadOnlyList<string> names = StepNumbers.Names(record.RotorCount);
        for (int n = 0; n < names.Count; n++) text.Append(names[n]).Append(" = ").Append(Of(record.Numbers[n])).Append('\n');
        text.Append("# cells of the rotors' tables that the step looks into: rotor, bytes from the table's start, terms\n");
        foreach ((int rotor, ulong offset, double[] terms) in record.Cells)
        {
            text.Append(CultureInfo.InvariantCulture, $"{Cell} = {rotor + 1} {offset}");
            foreach (double term in terms) text.Append(' ').Append(Of(term));
            text.Append('\n');
        }
        return text.ToString();
    }

    /// <exception cref="FormatException">The text is wrong.</exception>
    public static StepRecord Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Dictionary<string, (string Value, int Line)> values = new(StringComparer.Ordinal);
        List<(string Value, int Line)> cells = [];
        int number = 0;
        foreach (string raw in text.Split('\n'))
        {
            number++;
            string line = raw.Trim();
            if (line.Length == 0 || line[0] == '#') continue;
            int at = line.IndexOf('=', StringComparison.Ordinal);
            if (at < 1) throw new FormatException($"Line {number} has no 'key = value'.");
            string key = line[..at].Trim(), value = line[(at + 1)..].Trim();
            if (key == Cell) cells.Add((value, number));
            else if (!values.TryAdd(key, (value, number))) throw new FormatException($"Line {number}: {key} stands there twice.");
        }
        if (!values.TryGetValue(Format, out (string Value, int Line) format)) throw new FormatException($"This is no record of a fault: it has no {Format}.");
        if (format.Value != "1") throw new FormatException($"Line {format.Line}: {Format} is '{format.Value}'; this program reads 1.");
        Lines lines = new(values);
        int rotors = lines.Whole("rotors", 1, Craft.MaxRotors);
        StepRecord record = new()
        {
            Craft = lines.Text("craft"),
            Lane = lines.Whole("lane", 0, 15),
            Number = lines.Whole("number", 0, int.MaxValue),
            Step = lines.Positive("step_s"),
            Integrator = lines.Word<Integrator>("integrator"),
            RotorCount = rotors,
            IsSingle = lines.Word<Precision>("precision") == Precision.Single,
            DynamicInflow = lines.Flag("dynamic_inflow"),
            Primed = lines.Flag("primed"),
            Fitted = lines.Flag("fitted"),
            FitAhead = lines.Number("fit_ahead_s"),
            Broken = lines.Word<Invariant>("broken"),
            Stage = lines.Word<KernelStage>("stage"),
            Numbers = [.. StepNumbers.Names(rotors).Select(lines.Number)],
        };
        foreach ((string value, int line) in cells) record.Cells.Add(CellOf(value, line, record));
        return record;
    }

    private static IEnumerable<(string Key, string Value)> Heads(StepRecord record)
    {
        yield return (Format, "1");
        yield return ("craft", Plain(record.Craft));
        yield return ("broken", record.Broken.ToString());
        yield return ("stage", record.Stage.ToString());
        yield return ("lane", record.Lane.ToString(CultureInfo.InvariantCulture));
        yield return ("number", record.Number.ToString(CultureInfo.InvariantCulture));
        yield return ("step_s", Of(record.Step));
        yield return ("integrator", record.Integrator.ToString());
        yield return ("rotors", record.RotorCount.ToString(CultureInfo.InvariantCulture));
        yield return ("precision", (record.IsSingle ? Precision.Single : Precision.Double).ToString());
        yield return ("dynamic_inflow", Of(record.DynamicInflow));
        yield return ("primed", Of(record.Primed));
        yield return ("fitted", Of(record.Fitted));
        yield return ("fit_ahead_s", Of(record.FitAhead));
    }

    private static (int Rotor, ulong Offset, double[] Terms) CellOf(string value, int line, StepRecord record)
    {
        string[] parts = value.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != 2 + RotorTable.CellSize)
            throw new FormatException($"Line {line}: a cell has {2 + RotorTable.CellSize} numbers, not {parts.Length}.");
        ulong bytes = RotorTable.CellSize * (record.IsSingle ? 4UL : 8UL), cells = RotorTable.PackedCount / RotorTable.CellSize;
        bool rotorFits = int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int rotor) && rotor >= 1 && rotor <= record.RotorCount;
        bool placeFits = ulong.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out ulong offset) && offset % bytes == 0 && offset / bytes < cells;
        if (!rotorFits || !placeFits) throw new FormatException($"Line {line}: there is no cell {parts[0]} {parts[1]}.");
        double[] terms = new double[RotorTable.CellSize];
        for (int n = 0; n < terms.Length; n++)
        {
            if (!Try(parts[n + 2], out terms[n])) throw new FormatException($"Line {line}: '{parts[n + 2]}' is no number.");
        }
        return (rotor - 1, offset, terms);
    }

    private static string Of(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    private static string Of(bool flag) => flag ? "true" : "false";

    private static bool Try(string text, out double number) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number);

    /// <summary>A name without what would break a line.</summary>
    private static string Plain(string name) => new([.. name.Where(c => !char.IsControl(c)).Take(200)]);

    private enum Precision
    {
        Double,
        Single,
    }

    /// <summary>Values by key, each with one clear error.</summary>
    private sealed class Lines(Dictionary<string, (string Value, int Line)> values)
    {
        public string Text(string key) => Get(key).Value;

        public double Number(string key)
        {
            (string value, int line) = Get(key);
            return Try(value, out double number) ? number : throw new FormatException($"Line {line}: {key} is '{value}', which is no number.");
        }

        public double Positive(string key)
        {
            double number = Number(key);
            if (number > 0 && double.IsFinite(number)) return number;
            throw new FormatException($"Line {Get(key).Line}: {key} is {number}; it must be above 0 and finite.");
        }

        public int Whole(string key, int least, int most)
        {
            (string value, int line) = Get(key);
            if (int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most) return number;
            throw new FormatException($"Line {line}: {key} is '{value}'; it must be a whole number from {least} to {most}.");
        }

        public bool Flag(string key)
        {
            (string value, int line) = Get(key);
            return value is "true" or "false" ? value == "true" : throw new FormatException($"Line {line}: {key} is '{value}'; it must be true or false.");
        }

        public TWord Word<TWord>(string key)
            where TWord : struct, Enum
        {
            (string value, int line) = Get(key);
            foreach (TWord word in Enum.GetValues<TWord>())
            {
                if (value == word.ToString()) return word;
            }
            throw new FormatException($"Line {line}: {key} is '{value}'; it must be one of {string.Join(", ", Enum.GetNames<TWord>())}.");
        }

        private (string Value, int Line) Get(string key) =>
            values.TryGetValue(key, out (string Value, int Line) found) ? found : throw new FormatException($"There is no line {key}.");
    }
}
