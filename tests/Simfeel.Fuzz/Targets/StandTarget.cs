using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Studies.Fit;
using Simfeel.Studies.Fit.Reading;

namespace Simfeel.Fuzz.Targets;

/// <summary>Thrust tables for <c>fit</c>. What is taken has its rows checked, and a share of it is fitted.</summary>
internal sealed class StandTarget : Target
{
    private static readonly string[] Headings =
    [
        "Throttle [%]", "Thrust [gf]", "Thrust", "Torque [N m]", "Torque", "Voltage [V]", "Current [A]", "RPM", "eRPM", "Power [W]", "Efficiency g/W", "Propeller", "ESC [us]", "Schub [g]", "Drehzahl [1/min]", "Moment [mN m]",
        "Temperature", "", "?", "Power", "Mech. power (W)", "Thrust (stone)", "Voltage [bar]",
    ];

    private readonly IReadOnlyList<byte[]> _corpus = Corpus.Of("bench/wagtail-stand.csv", "corpus/stands");
    private readonly TableMutator _table = new(Headings);
    private readonly Lazy<StandModel> _model = new(() => new(Starters.Wagtail));

    public override string Name => "thrust tables";

    public override int Weight => 70;

    public override string Ending => ".csv";

    public override byte[] Make(Dice dice) =>
        dice.Once(4) ? Bytes.Mutate(dice.Of(_corpus), _corpus, dice) : _table.Mutate(dice.Of(_corpus), dice);

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz-stand.csv", input);
        // UTF-16 counts its line ends by zeros
        int lines = Reasons.LinesOf(input) + 1;
        StandReadingOptions options = dice.Below(8) switch
        {
            0 => new() { DecimalMark = ',' },
            1 => new() { Block = dice.From(-1, 3) },
            2 => new() { Poles = 2 * dice.From(1, 30) },
            3 => new() { Columns = [ColumnOverride.Parse("#2=thrust:N", out _)!] },
            4 => new() { Columns = [ColumnOverride.Parse("Thrust=ignore", out _)!, ColumnOverride.Parse("#9=rpm", out _)!] },
            _ => new(),
        };
        try
        {
            StandTable table = StandTableReader.Read(path, _model.Value, options);
            foreach (StandBlock block in table.Blocks) Check(block);
            RowSelection.Run(table, _model.Value);
            if (Deep(dice, 25)) Fit(table);
            return Verdict.Accepted;
        }
        catch (FitException error)
        {
            Reasons.Check(error.Diagnostics, [path], true, lines);
            return Verdict.Rejected;
        }
    }

    private static void Check(StandBlock block)
    {
        foreach (StandRow row in block.Rows)
        {
            foreach (double value in (double[])[row.Throttle, row.Thrust, row.Torque, row.Voltage, row.Current, row.ElectricalPower, row.MechanicalPower, row.Speed, row.Efficiency])
            {
                // NaN stands for what is not given
                if (double.IsInfinity(value)) throw new UnexplainedException($"line {row.Line} holds an infinite number");
            }
        }
        foreach (RefusedRow row in block.Refused)
        {
            if (row.Line < 1 || row.Reason.Length < 8) throw new UnexplainedException($"line {row.Line} is left out because '{row.Reason}'");
        }
    }

    private static void Fit(StandTable table)
    {
        StandFit fit = StandFitter.Fit(Starters.Wagtail, table);
        foreach (FittedConstant constant in fit.Constants.Where(constant => constant.Determined))
        {
            if (!double.IsFinite(constant.Value) || double.IsNaN(constant.Low) || double.IsNaN(constant.High)) throw new UnexplainedException($"{constant.Key} is fitted as {constant.Value}");
        }
        Finite.Check(fit.After with { Sheet = null }, "the fitted build");
    }
}
