using System.Globalization;

namespace Simfeel.Fuzz.Running;

/// <summary>What a campaign was asked for.</summary>
internal sealed record Arguments
{
    public const string Usage = """
        Simfeel.Fuzz: mutated files and command lines through the program's own readers.

          --count N        inputs in all, shared out among the kinds (default 20000)
          --seed N         seed (default 1); the same seed gives the same inputs
          --kinds A,B      these kinds only; the count is then shared among them
          --from N         number of the first input of each kind (default 0)
          --save FOLDER    where inputs that break something go
          --out FILE       adds a line of the results table for each kind
          --case FILE --kinds A   this one input, carried on to its end
          --cases          all inputs under corpus/broken
          --processes N    N command lines with hostile files as processes of their own, the folder tree looked at before and after
          --strace         with --processes: look on with strace as well
        """;

    public long Count { get; init; } = 20_000;

    public int Seed { get; init; } = 1;

    public long From { get; init; }

    public IReadOnlyList<string> Kinds { get; init; } = [];

    public string? Save { get; init; }

    public string? Out { get; init; }

    public string? Case { get; init; }

    public bool Cases { get; init; }

    public int Processes { get; init; }

    public bool Strace { get; init; }

    /// <summary>Reads a command line; null with a reason where it is wrong.</summary>
    public static Arguments? Parse(string[] args, out string wrong)
    {
        Arguments read = new();
        wrong = "";
        for (int n = 0; n < args.Length; n++)
        {
            string option = args[n];
            if (option is "--cases" or "--strace")
            {
                read = option == "--cases" ? read with { Cases = true } : read with { Strace = true };
                continue;
            }
            string value = ++n < args.Length ? args[n] : "";
            bool number = long.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out long whole);
            switch (option)
            {
                case "--count" when number: read = read with { Count = whole }; break;
                case "--seed" when number: read = read with { Seed = (int)whole }; break;
                case "--from" when number: read = read with { From = whole }; break;
                case "--processes" when number: read = read with { Processes = (int)whole }; break;
                case "--kinds": read = read with { Kinds = value.Split(',') }; break;
                case "--save" when value.Length > 0: read = read with { Save = value }; break;
                case "--out" when value.Length > 0: read = read with { Out = value }; break;
                case "--case" when value.Length > 0: read = read with { Case = value }; break;
                default:
                    wrong = $"{option} {value} is not understood.";
                    return null;
            }
        }
        return read;
    }
}
