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

    /// <summary>Prints a table without colour codes, blank rows and trailing blanks, however wide the terminal is.</summary>
    public static void Print(Table table)
    {
        using StringWriter text = new();
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = 200;
        console.Write(table);
        foreach (string line in text.ToString().Split('\n'))
        {
            if (!string.IsNullOrWhiteSpace(line)) Console.WriteLine(line.TrimEnd());
        }
        Console.WriteLine();
    }

    /// <summary>A number that may be negative, with fixed decimals; what rounds to nothing has no sign.</summary>
    public static string Signed(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals);
    }
}
