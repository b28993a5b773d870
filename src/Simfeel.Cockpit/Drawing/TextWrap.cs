using System.Globalization;
using Simfeel.Builds.Writing;
using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>Breaks texts into lines.</summary>
internal static class TextWrap
{
    /// <summary>
    /// Lines no wider than <paramref name="width"/> pixels, broken at spaces; a word that is wider alone is broken where it
    /// must. A line break in the text stays one. At least one line, which may be empty.
    /// </summary>
    public static string[] Lines(string text, SKFont font, float width)
    {
        List<string> lines = [];
        foreach (string paragraph in text.Split('\n'))
        {
            string line = "";
            foreach (string word in paragraph.Split(' '))
            {
                string longer = line.Length == 0 ? word : line + " " + word;
                if (font.MeasureText(longer) <= width)
                {
                    line = longer;
                    continue;
                }
                if (line.Length > 0) lines.Add(line);
                line = Broken(word, font, width, lines);
            }
            lines.Add(line);
        }
        return [.. lines];
    }

    private static string Broken(string word, SKFont font, float width, List<string> lines)
    {
        while (font.MeasureText(word) > width)
        {
            int first = StringInfo.GetNextTextElementLength(word), fits = Math.Max(first, TextCut.Before(word, word.Length - 1));
            while (fits > first && font.MeasureText(word.AsSpan(0, fits)) > width) fits = Math.Max(first, TextCut.Before(word, fits - 1));
            if (fits == word.Length) break;
            lines.Add(word[..fits]);
            word = word[fits..];
        }
        return word;
    }
}
