using System.Reflection;
using Simfeel.CommandLine.Commands;
using Simfeel.Fuzz.Running;
using Spectre.Console.Cli;

namespace Simfeel.Fuzz.Mutation;

/// <summary>Command lines out of the program's own verbs and options.</summary>
internal static class Words
{
    /// <summary>Good lines to begin with.</summary>
    private static readonly string[] Good =
    [
        "weigh wagtail", "weigh wagtail --json", "weigh nowhere.toml --altitude 500", "stand wagtail --all --charge 50", "stand --propeller wagtail --rpm 12000,24000 --axial 0..30 --points 7", "stand curlew --steps 5 --wear 10",
        "bench wagtail --worksheet bench.html --template mine-bench.toml", "bench wagtail --results mine-bench.toml --out wagtail-measured.toml --force", "fit stand stand.csv --build wagtail --no-write",
        "fit stand.csv --build wagtail --column Pull=thrust:gf --block 1 --poles 14 --decimal comma", "fit swing --build wagtail --axis roll --mass-g 598 --spacing-mm 200 --length-mm 1000 --period-s 1.2",
        "compare wagtail curlew --sheet sheet.html --draws 50 --bands 5,15 --weights stop_time=3", "compare wagtail curlew --effort 0.5 --policy limit --without inflow,wake --seed 3 --height 1", "compare wagtail curlew --json --full",
        "blame wagtail curlew --metric stop_time,catch_time --order", "grow wagtail --by motor.volume --metric stop_time --range 0.5..2 --points 5 --like curlew",
        "sweep wagtail --vary motor.volume=0.6..1.8/4 --vary battery.mass=0.7..1.6 --samples 100 --out sweep.parquet,sweep.csv --shard 2/8 --fresh --pareto stop_time", "sweep-merge sweep.csv sweep.csv.share-1-of-2 sweep.csv.share-2-of-2",
        "lesson size --value 0.5", "lesson mine.toml --hands 3,7,2 --log class.csv --sheet lesson.html --build wagtail", "lesson size --answer b --skip --worksheet l.md", "fly wagtail curlew --record flight.arrow --field gull-point --size 640x360",
        "fly wagtail curlew --blind triangle --trials 12 --controls 3 --late 50 --votes votes.csv", "fly --replay flight.arrow --video flight.mp4", "votes votes.csv", "votes votes.csv --json", "tour pictures", "validate --plots pictures", "doctor --hash", "doctor --json", "",
    ];

    private static readonly string[] Paths = ["../../x", "../../x.toml", ".", "..", "/", "", " ", "a/b/c", "no/such/x.html", "wagtail.toml", "WAGTAIL", "x.html", "x.md", "x.csv", "x.parquet", "x.toml", "\u00fc\u4e2d.toml", "-", "--", "-x", "~", "*", "a\tb", "x\u0000y", new('n', 5000)];

    private static readonly string[] Options =
    [
        .. typeof(OutputSettings).Assembly.GetTypes().Where(type => typeof(CommandSettings).IsAssignableFrom(type))
            .SelectMany(type => type.GetProperties()).Select(property => property.GetCustomAttribute<CommandOptionAttribute>()).OfType<CommandOptionAttribute>()
            .SelectMany(option => option.LongNames).Distinct().Order(StringComparer.Ordinal).Select(name => "--" + name),
        "--help", "--version", "-h", "-v", "--no-such", "---", "--json=true", "--json=5",
    ];

    private static readonly string[] Verbs = ["weigh", "stand", "bench", "fit", "swing", "compare", "blame", "grow", "sweep", "sweep-merge", "lesson", "fly", "votes", "tour", "validate", "doctor", "no-such", "Weigh", "__default_command"];

    private static readonly string[] Values =
    [
        "5..2", "2..5", "0..0", "1..", "..2", "..", "nan..nan", "-1..1e308", "1,2", ",", ",,", "1,", "15,5", "a=b", "=", "stop_time=3", "stop_time=nan", "no=1", "stop_time", "stop_time,no", "hover_endurance,stop_time",
        "2/8", "0/0", "9/8", "1/99999999999", "/", "640x360", "0x0", "999999x9", "x", "motor.volume=0.5..2", "motor.volume=0.5..2/0", "motor.volume=nan..2", "propeller.diameter=0.9..1.1/1000", "battery.x_mm=-5..5", "x=1..2=3", "#1=rpm", "#0=rpm", "#99999999999=rpm", "A=thrust:stone",
        "inflow", "inflow,nothing", "triangle", "pair", "roll", "comma", "3,7,2", "a", "z",
    ];

    /// <summary>A line: a good one with words changed, or words at random.</summary>
    public static string[] Line(Dice dice)
    {
        List<string> words = dice.Once(8) ? [dice.Of(Verbs)] : [.. dice.Of(Good).Split(' ', StringSplitOptions.RemoveEmptyEntries)];
        for (int changes = dice.Below(5); changes > 0; changes--)
        {
            int at = dice.Below(words.Count + 1), old = words.Count == 0 ? -1 : Math.Min(at, words.Count - 1);
            switch (dice.Below(8))
            {
                case 0: words.Insert(at, dice.Of(Options)); break;
                case 1:
                    words.Insert(at, Value(dice));
                    words.Insert(at, dice.Of(Options));
                    break;
                case 2 when old >= 0: words.RemoveAt(old); break;
                case 3 when old >= 0: words.Insert(at, words[old]); break;
                case 4 when old >= 0: words[old] = Value(dice); break;
                case 5 when old >= 0: (words[old], words[^1]) = (words[^1], words[old]); break;
                case 6 when old >= 0: words[old] = $"{words[old]}={Value(dice)}"; break;
                default: words.Insert(at, Value(dice)); break;
            }
        }
        return [.. words.Select(word => word.Replace('\n', ' ').Replace("\0", "", StringComparison.Ordinal))];
    }

    private static string Value(Dice dice) => dice.Below(5) switch
    {
        0 => dice.Of(Paths),
        1 => dice.Of(Values),
        2 => NastyWords.Word(dice),
        _ => NastyWords.Number(dice),
    };
}
