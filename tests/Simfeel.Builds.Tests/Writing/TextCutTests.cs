using System.Text;
using Simfeel.Builds.Writing;

namespace Simfeel.Builds.Tests.Writing;

public class TextCutTests
{
    [Theory]
    [InlineData("Wagtail", 4, "Wag\u2026")]
    [InlineData("Wagtail", 7, "Wagtail")]
    // a helicopter of two halves, an e with an accent of its own, Arabic with its vowels
    [InlineData("ab\U0001F681cd", 4, "ab\u2026")]
    [InlineData("ab\U0001F681cd", 5, "ab\U0001F681\u2026")]
    [InlineData("be\u0301cd", 3, "b\u2026")]
    [InlineData("\u0637\u064F\u0648\u0644\u064C\u0630", 5, "\u0637\u064F\u0648\u2026")]
    [InlineData("\u0301\u0301\u0301", 2, "\u2026")]
    public void A_text_is_cut_between_whole_characters(string text, int letters, string cut)
    {
        Assert.Equal(cut, TextCut.Short(text, letters));
        // no half of a character is left, which UTF-8 could not hold
        Assert.Equal(cut, Encoding.UTF8.GetString(new UTF8Encoding(false, true).GetBytes(cut)));
    }
}
