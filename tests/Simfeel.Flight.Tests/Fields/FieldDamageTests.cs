using Simfeel.Builds;
using Simfeel.Flight.Fields;

namespace Simfeel.Flight.Tests.Fields;

/// <summary>Random damage to the shipped field: always a result, never an exception, and no field is refused without a line.</summary>
public class FieldDamageTests
{
    private const string Letters = "\n\t \"'#=[]{},.-+_0123456789abcdeghmnorstz\u00E9";

    [Fact]
    public void DamagedFilesNeverThrowAndNameALine()
    {
        Random random = new(20261125);
        string good = File.ReadAllText(GullPoint.File);
        int refused = 0;
        for (int n = 0; n < 2000; n++)
        {
            string text = Damaged(good, random);
            FieldResult result = FieldReader.Parse(text, "damaged.toml");
            Diagnostic[] errors = [.. result.Diagnostics.Where(d => d.Severity == Severity.Error)];
            Assert.Equal(result.Map is null, errors.Length > 0);
            Assert.All(errors, error => Assert.InRange(error.Line ?? 0, 1, text.Count(c => c == '\n') + 1));
            if (errors.Length > 0) refused++;
        }
        // both sorts must be common, or the test tries nothing
        Assert.InRange(refused, 400, 1900);
    }

    /// <summary>One to three changes: a letter, a line lost, doubled or moved, a number scaled, or the end cut off.</summary>
    private static string Damaged(string good, Random random)
    {
        string text = good;
        for (int change = random.Next(3); change >= 0; change--)
        {
            List<string> lines = [.. text.Split('\n')];
            int at = random.Next(lines.Count), other = random.Next(lines.Count);
            switch (random.Next(7))
            {
                case 0: lines.RemoveAt(at); break;
                case 1: lines.Insert(other, lines[at]); break;
                case 2: (lines[at], lines[other]) = (lines[other], lines[at]); break;
                case 3: lines[at] = lines[at].Replace("= ", "= -", StringComparison.Ordinal); break;
                case 4: lines[at] += "0"; break;

                default:
                    text = string.Join('\n', lines);
                    int place = random.Next(text.Length);
                    text = text[..place] + Letters[random.Next(Letters.Length)] + text[(place + random.Next(2))..];
                    continue;
            }
            text = string.Join('\n', lines);
        }
        return random.Next(10) == 0 ? text[..(1 + random.Next(text.Length - 1))] : text;
    }
}
