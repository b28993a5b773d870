using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Mutation;

/// <summary>Words that numbers, names and texts are replaced with.</summary>
internal static class NastyWords
{
    /// <summary>Numbers as people, programs and accidents write them.</summary>
    public static IReadOnlyList<string> Numbers { get; } =
    [
        "0", "-0", "0.0", "-0.0", "1", "-1", "2", "3", "0.5", "1e-308", "4.9e-324", "1e308", "-1e308", "1e400", "nan", "+nan", "-nan", "inf", "-inf", "+inf", "NaN", "Infinity",
        "0.12345678901234567", "3.0000000000000004", "9007199254740993", "9223372036854775807", "-9223372036854775808", "9223372036854775808", "99999999999999999999999",
        "0x7fffffff", "0xFFFFFFFFFFFFFFFF", "0o17", "0b1", "1_000", "1__0", "_1", "+5", "++5", "5.", ".5", "05", "1,5", "1.5e", "1e5.5", "1e+05", "5 g", "5mm", "5%", "\u0663", "\u22125", "1\u00a0000",
        "2147483648", "-2147483649", "65536", "256", "1000", "1001", "1e9", "1e-9", "100.0000000001",
    ];

    /// <summary>Words, paths and controls.</summary>
    public static IReadOnlyList<string> Words { get; } =
    [
        "", " ", "wagtail", "curlew", "roll", "yaw", "matched", "bare", "same-gains", "x 2", "x2", "x nan", "x 1e308", "true", "false", "null", "../../x", "/etc/hostname", "a/../b", "./", "..", ".", "a:b", "a\\\\b",
        "\u202eabc", "\u0301", "\ud83d\ude00", "\u00df", "\u0130", "name\\u0000", "\\u001b[31m", "\\n", "\\t", "%s%n", "{0}", "[red]", "<script>", "'", "$(id)", "`id`", "measured", "datasheet",
    ];

    /// <summary>A word, now and then a very long one.</summary>
    public static string Word(Dice dice) => dice.Once(40) ? new string(dice.Of("ax 9/".ToCharArray()), dice.From(100, 5000)) : dice.Of(Words);

    /// <summary>A number, now and then one with very many digits.</summary>
    public static string Number(Dice dice) => dice.Below(40) switch
    {
        0 => new string('9', dice.From(20, 2000)),
        1 => "0." + new string('3', dice.From(20, 2000)),
        2 => "1" + new string('0', dice.From(20, 400)),
        _ => dice.Of(Numbers),
    };
}
