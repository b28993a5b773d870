using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Simfeel.Flight.Tuning;

namespace Simfeel.Studies.Blind;

/// <summary>A vote as a line of comma-separated values, and back.</summary>
internal static class VoteRowFormat
{
    /// <summary>Names of the columns.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "date", "kind", "trial", "control", "build_a", "build_b", "order", "answer", "right", "metric", "difference_percent",
        "policy", "video_delay_ms", "version",
    ];

    /// <summary>The first line of a log.</summary>
    public static string Header { get; } = CsvLine.Join(Columns);

    private const string DateFormat = "yyyy-MM-dd'T'HH:mm:sszzz";
    private const int LongestText = 200;

    /// <summary>A vote as a line without its end.</summary>
    public static string Write(VoteRow row)
    {
        (RevealedTrial vote, VoteSubject subject) = (row.Vote, row.Subject);
        return CsvLine.Join(
        [
            row.Date.ToString(DateFormat, CultureInfo.InvariantCulture), row.Test.Word, vote.Trial.ToString(CultureInfo.InvariantCulture),
            YesNo(vote.Control), subject.BuildA, subject.BuildB, vote.Order, vote.Answer, YesNo(vote.Right), subject.Metric,
            double.IsNaN(subject.Difference_Percent) ? "" : Number(subject.Difference_Percent),
            TuningPolicies.Word(subject.Policy), Number(subject.VideoDelay_ms), subject.Version,
        ]);
    }

    /// <summary>A line as a vote.</summary>
    /// <param name="fields">As many as there are columns.</param>
    /// <param name="row">The vote; null where a field is wrong.</param>
    /// <param name="wrong">The first field that is wrong and what is allowed there.</param>
    public static bool TryRead(IReadOnlyList<CsvField> fields, [NotNullWhen(true)] out VoteRow? row, out (int Column, string Allowed) wrong)
    {
        for (int n = 0; n < fields.Count; n++)
        {
            if (!fields[n].Text.Any(char.IsControl)) continue;
            (row, wrong) = (null, (n, "text without control characters"));
            return false;
        }
        Reader read = new(fields);
        DateTimeOffset date = read.Take($"a date and time such as 2026-05-01T18:30:00+02:00", Date);
        BlindTest test = read.Take(List(BlindTest.All.Select(test => test.Word)), text => BlindTest.Parse(text)) ?? BlindTest.Triangle;
        int trial = read.Take($"a whole number from 1 to {2 * BlindSession.MostTrials}", text => Whole(text, 2 * BlindSession.MostTrials));
        bool control = read.Take("yes or no", Truth);
        string buildA = read.Take($"a name of 1 to {LongestText} characters", Name) ?? "";
        string buildB = read.Take($"a name of 1 to {LongestText} characters", Name) ?? "";
        string order = read.Take(
            control ? $"{test.Flights} times A or {test.Flights} times B, since it is a control" : $"an order of a {test.Word}, such as {(test == BlindTest.Pair ? "AB" : "ABA")}",
            text => IsOrder(test, control, text) ? text : null) ?? "";
        string answer = read.Take(List(test.Choices), text => test.Choices.Contains(text) ? text : null) ?? "";
        // of a control, right is a lot; of a real trial it follows from the order
        string? due = control || test.RightChoice(order) is not int right ? null : YesNo(answer == test.Choices[right - 1]);
        bool hit = read.Take(due is null ? "yes or no" : $"{due}, as order and answer say", text => due is null || text == due ? Truth(text) : null);
        string metric = read.Take($"the name of a metric of at most {LongestText} characters, or nothing", text => text.Length <= LongestText ? text : null) ?? "";
        double difference = read.Take(
            $"a number from {-VoteSubject.LargestDifference_Percent} to {VoteSubject.LargestDifference_Percent} %, or nothing",
            text => text.Length == 0 ? double.NaN : Between(text, -VoteSubject.LargestDifference_Percent, VoteSubject.LargestDifference_Percent));
        TuningPolicy policy = read.Take(List(TuningPolicies.Words), TuningPolicies.Parse);
        double delay = read.Take($"a number from 0 to {VoteSubject.LongestVideoDelay_ms} ms", text => Between(text, 0, VoteSubject.LongestVideoDelay_ms));
        string version = read.Take($"at most {LongestText} characters", text => text.Length <= LongestText ? text : null) ?? "";
        wrong = read.Wrong ?? default;
        row = read.Wrong is null
            ? new(date, test, new(trial, control, order, answer, hit), new(buildA, buildB, metric, difference, policy, delay, version))
            : null;
        return row is not null;
    }

    private static bool IsOrder(BlindTest test, bool control, string text) =>
        control ? text == new string('A', test.Flights) || text == new string('B', test.Flights) : test.RightChoice(text) is not null;

    private static string YesNo(bool value) => value ? "yes" : "no";

    private static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static string List(IEnumerable<string> words) => string.Join(", ", words);

    private static DateTimeOffset? Date(string text) =>
        DateTimeOffset.TryParseExact(text, [DateFormat, "yyyy-MM-dd'T'HH:mm:ss'Z'"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset date) ? date : null;

    private static bool? Truth(string text) => text switch { "yes" => true, "no" => false, _ => null };

    private static string? Name(string text) => text.Trim().Length > 0 && text.Length <= LongestText ? text : null;

    private static int? Whole(string text, int most) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value >= 1 && value <= most ? value : null;

    private static double? Between(string text, double least, double most) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most ? value : null;

    /// <summary>Takes one field after the other and remembers the first that is wrong.</summary>
    private sealed class Reader(IReadOnlyList<CsvField> fields)
    {
        private int _next;

        public (int Column, string Allowed)? Wrong { get; private set; }

        public T Take<T>(string allowed, Func<string, T?> parse)
            where T : struct =>
            parse(fields[_next++].Text) ?? Refuse<T>(allowed);

        public T? Take<T>(string allowed, Func<string, T?> parse)
            where T : class =>
            parse(fields[_next++].Text) ?? Refuse<T?>(allowed);

        private T? Refuse<T>(string allowed)
        {
            Wrong ??= (_next - 1, allowed);
            return default;
        }
    }
}
