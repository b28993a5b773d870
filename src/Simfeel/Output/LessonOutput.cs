using System.Globalization;
using Simfeel.Studies.Lessons;

namespace Simfeel.CommandLine.Output;

/// <summary>Lessons on the terminal.</summary>
internal static class LessonOutput
{
    private const int Width = 110;

    /// <summary>Prints what lessons there are, by topic.</summary>
    public static void List(IEnumerable<Lesson> lessons, bool json)
    {
        if (json)
        {
            JsonOutput.Print(new()
            {
                ["lessons"] = lessons.Select(lesson => new Dictionary<string, object?>
                {
                    ["name"] = lesson.Name,
                    ["title"] = lesson.Title,
                    ["topic"] = lesson.Topic,
                    ["idea"] = lesson.Idea,
                    ["build"] = lesson.Build,
                    ["changes"] = lesson.Change.Key.Path,
                }).ToArray(),
            });
            return;
        }
        Console.WriteLine("Lessons: a question first, then two craft that differ in one thing, and why.");
        foreach (IGrouping<string, Lesson> topic in lessons.GroupBy(lesson => lesson.Topic))
        {
            Console.WriteLine();
            Console.WriteLine(topic.Key);
            foreach (Lesson lesson in topic) Console.WriteLine($"  {lesson.Name,-22} {lesson.Idea}");
        }
        Console.WriteLine();
        Console.WriteLine("./simfeel lesson NAME flies one; in the window: Lessons on the start page.");
    }

    /// <summary>Asks before anything is shown; null where nobody answers.</summary>
    public static ClassAnswers? Ask(Lesson lesson)
    {
        Head(lesson);
        while (true)
        {
            Console.Write($"Your answer (a letter; or the hands of a class, such as {string.Join(',', lesson.Choices.Select((_, n) => n + 1))}; Enter to skip): ");
            string? line = Console.ReadLine();
            if (Console.IsInputRedirected) Console.WriteLine(line);
            if (string.IsNullOrWhiteSpace(line)) return null;
            if (Parse(line, lesson) is ClassAnswers answers) return answers;
            Console.WriteLine($"A letter from a to {char.ToLowerInvariant(Lesson.Letter(lesson.Choices.Count - 1))}, or {lesson.Choices.Count} numbers with commas between them.");
        }
    }

    /// <summary>What was answered: one letter, or the hands for each answer; null where it is neither.</summary>
    public static ClassAnswers? Parse(string text, Lesson lesson)
    {
        string trimmed = text.Trim();
        if (trimmed.Length == 1 && char.ToUpperInvariant(trimmed[0]) - 'A' is int choice && choice >= 0 && choice < lesson.Choices.Count)
        {
            ClassAnswers one = new(lesson.Choices.Count);
            one.Add(choice);
            return one;
        }
        string[] parts = trimmed.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != lesson.Choices.Count) return null;
        int[] hands = new int[parts.Length];
        for (int n = 0; n < parts.Length; n++)
        {
            if (!int.TryParse(parts[n], NumberStyles.None, CultureInfo.InvariantCulture, out hands[n]) || hands[n] > ClassAnswers.Most) return null;
        }
        return new(hands);
    }

    /// <summary>Prints what came out and why.</summary>
    public static void Print(LessonResult result, ClassAnswers? answers)
    {
        Lesson lesson = result.Lesson;
        if (answers is null || answers.Count > 0) Console.WriteLine();
        Console.WriteLine($"{lesson.Title}");
        Wrap(LessonWords.Change(result));
        Wrap(LessonWords.Flown(result));
        Console.WriteLine();
        Wrap(LessonWords.Outcome(result));
        if (LessonWords.Right(result) is { Length: > 0 } right) Wrap(right);
        if (answers is { Count: > 0 } && !result.IsOwnValue)
        {
            Wrap(LessonWords.Class(result, answers));
            if (answers.Count > 1)
            {
                int most = Math.Max(1, answers.Hands.Max());
                for (int n = 0; n < lesson.Choices.Count; n++)
                    Console.WriteLine($"  {Lesson.Letter(n)} {new string('#', (int)Math.Round(24.0 * answers.Hands[n] / most)),-24} {answers.Hands[n]}");
            }
        }
        if (LessonWords.ClaimMissed(result) is { Length: > 0 } missed) Wrap(missed);
        Console.WriteLine();
        Wrap("Why: " + lesson.Explanation);
        Wrap($"Try: {lesson.Try.Text}");
        Console.WriteLine($"     --value {LessonWords.ValueForm(lesson)} flies it with a value of your own.");
        if (lesson.Care.Length > 0) Wrap("With a real craft: " + lesson.Care);
    }

    /// <summary>Prints the lesson for machines.</summary>
    public static void PrintJson(LessonResult result, ClassAnswers? answers)
    {
        Lesson lesson = result.Lesson;
        JsonOutput.Print(new()
        {
            ["lesson"] = lesson.Name,
            ["build"] = result.A.Assembled.Build.Name,
            ["changes"] = lesson.Change.Key.Path,
            ["values"] = new[] { Value(result.A.Value), Value(result.B.Value) },
            ["number"] = lesson.Number.Title,
            ["unit"] = lesson.Number.Display.Symbol,
            ["a"] = result.A.Number * lesson.Number.Display.PerSi,
            ["b"] = result.B.Number * lesson.Number.Display.PerSi,
            ["difference"] = result.Difference,
            ["difference_percent"] = result.Percent,
            ["right"] = result.RightChoice is int right ? Lesson.Letter(right).ToString() : null,
            ["claim_holds"] = result.ClaimHolds,
            ["hands"] = answers?.Hands,
        });

        static object Value(LessonValue value) => value.Word.Length > 0 ? value.Word : value.Number;
    }

    private static void Head(Lesson lesson)
    {
        Console.WriteLine($"{lesson.Topic}: {lesson.Title}");
        Wrap(lesson.Question);
        for (int n = 0; n < lesson.Choices.Count; n++) Console.WriteLine($"  {Lesson.Letter(n)}  {lesson.Choices[n].Text}");
    }

    private static void Wrap(string text)
    {
        int column = 0;
        foreach (string word in text.Split(' '))
        {
            if (column > 0 && column + 1 + word.Length > Width)
            {
                Console.WriteLine();
                column = 0;
            }
            else if (column > 0)
            {
                Console.Write(' ');
                column++;
            }
            Console.Write(word);
            column += word.Length;
        }
        Console.WriteLine();
    }
}
