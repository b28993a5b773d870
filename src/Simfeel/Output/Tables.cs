using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>Tables as every verb prints them: first column left, numbers right.</summary>
internal static class Tables
{
    /// <summary>An empty table.</summary>
    public static Table New(params string[] columns)
    {
        Table table = new() { Border = TableBorder.Simple, UseSafeBorder = true };
        for (int n = 0; n < columns.Length; n++)
        {
            TableColumn column = new(Markup.Escape(columns[n])) { NoWrap = true };
            table.AddColumn(n == 0 ? column : column.RightAligned());
        }
        return table;
    }

    /// <summary>A number that may be negative, with fixed decimals; what rounds to nothing has no sign.</summary>
    public static string Signed(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals);
    }
}
