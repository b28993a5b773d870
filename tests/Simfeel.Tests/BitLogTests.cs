using Simfeel.CommandLine.Determinism;

namespace Simfeel.Tests;

/// <summary>What a bit-log is told to say where two machines part, and the log that comes along.</summary>
public class BitLogTests
{
    private static readonly string Reference = File.ReadAllText(SourceTree.FullPath("assets/reference/bits.txt"));

    [Fact]
    public void A_log_is_the_same_as_itself_whatever_the_machine_lines_say()
    {
        BitLogComparison result = BitLogComparison.Of(Reference, Reference.Replace("machine vectors 512", "machine vectors 128", StringComparison.Ordinal));
        Assert.Equal((0, ""), (result.Different, result.First));
        Assert.InRange(result.Lines, 400, 500);
    }

    /// <summary>The first line that differs is told, not the first in the other's order, and how far apart the numbers are.</summary>
    [Theory]
    [InlineData("library sin ", 0, 1, "computes sin differently, by 1 unit in the last place")]
    [InlineData("mass curlew ", 2, 1, "Mass or inertia of curlew differ")]
    [InlineData("table gannet ", 0, 1, "The rotor table of gannet differs")]
    [InlineData("gains wagtail ", 5, 3, "Of wagtail the integral gain of pitch differs by 3 units in the last place")]
    [InlineData("flight slalom curlew 1.", 5, 2, "In the flight slalom of curlew, at or before 1.")]
    [InlineData("flight slalom curlew 1.", 5, 2, "the velocity east differs by 2 units in the last place")]
    [InlineData("flight hover wagtail ", 0, 1, "some state between two lines differs")]
    [InlineData("metric stop_time ", 1, 1, "The metric stop_time differs though all flights are the same")]
    [InlineData("hash flights_four_lanes ", 0, 1, "The hash flights_four_lanes differs")]
    public void A_difference_is_told_in_words(string line, int number, int units, string words)
    {
        BitLogComparison result = BitLogComparison.Of(Reference, Changed(line, number, units));
        Assert.Equal(1, result.Different);
        Assert.Contains(words, result.First, StringComparison.Ordinal);
    }

    /// <summary>Across zero there are both zeros between the smallest numbers of either sign.</summary>
    [Fact]
    public void Units_are_counted_across_zero()
    {
        string at = $"library sin {BitConverter.DoubleToUInt64Bits(Math.Sin(0.7)):x16}";
        string one = Reference.Replace(at, "library sin 0000000000000001", StringComparison.Ordinal);
        string other = Reference.Replace(at, "library sin 8000000000000001", StringComparison.Ordinal);
        Assert.NotEqual(one, other);
        Assert.Contains("by 2 units in the last place", BitLogComparison.Of(one, other).First, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_line_on_either_side_is_told()
    {
        string line = Reference.Split('\n').First(text => text.StartsWith("metric stop_time", StringComparison.Ordinal));
        string less = Reference.Replace(line + "\n", "", StringComparison.Ordinal);
        Assert.Equal("The other log has no line \"metric stop_time\".", BitLogComparison.Of(Reference, less).First);
        Assert.Equal("The other log has a line \"metric stop_time\" that this one has not.", BitLogComparison.Of(less, Reference).First);
    }

    [Theory]
    [InlineData("", "first line")]
    [InlineData("something else\n", "first line")]
    [InlineData(BitLog.Title + "\nlibrary sin\n", "line 2")]
    [InlineData(BitLog.Title + "\nlibrary sin x\n", "hexadecimal")]
    [InlineData(BitLog.Title + "\nsong sin 0\n", "no line of a bit-log")]
    [InlineData(BitLog.Title + "\nlibrary sin 0\nlibrary sin 1\n", "two lines")]
    public void What_is_no_bit_log_is_refused(string text, string names) =>
        Assert.Contains(names, Assert.Throws<FormatException>(() => BitLogComparison.Of(Reference, text)).Message, StringComparison.Ordinal);

    /// <summary>The reference with one number of one line a few units in the last place larger.</summary>
    private static string Changed(string line, int number, int units)
    {
        string old = Reference.Split('\n').First(text => text.StartsWith(line, StringComparison.Ordinal));
        string[] words = old.Split(' ');
        int at = words.Length - words.Count(word => word.Length == 16 && ulong.TryParse(word, System.Globalization.NumberStyles.AllowHexSpecifier, null, out _)) + number;
        words[at] = (ulong.Parse(words[at], System.Globalization.NumberStyles.AllowHexSpecifier, null) + (ulong)units).ToString("x16");
        return Reference.Replace(old, string.Join(' ', words), StringComparison.Ordinal);
    }
}
