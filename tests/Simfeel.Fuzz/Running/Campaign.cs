using System.Globalization;

namespace Simfeel.Fuzz.Running;

/// <summary>An input that broke something.</summary>
/// <param name="Number">Its number in the campaign.</param>
/// <param name="What">What happened.</param>
/// <param name="Input">The input.</param>
internal sealed record Failure(long Number, string What, byte[] Input);

/// <summary>What came of one kind of input.</summary>
internal sealed record KindResult(string Kind)
{
    public long Inputs { get; set; }

    public long Rejected { get; set; }

    public long Accepted { get; set; }

    /// <summary>Processor time of the slowest input, s.</summary>
    public double Worst { get; set; }

    public long WorstNumber { get; set; }

    /// <summary>Most bytes that one input had allocated.</summary>
    public long Largest { get; set; }

    public long Crashes { get; set; }

    public long Hangs { get; set; }

    public long Unexplained { get; set; }

    public List<Failure> Failures { get; } = [];

    public bool Clean => Crashes + Hangs + Unexplained == 0;
}

/// <summary>Runs many inputs of one kind.</summary>
internal static class Campaign
{
    /// <summary>Bytes that one input may have allocated.</summary>
    public const long MostBytes = 1L << 30;

    private const int MostFailures = 200;

    /// <summary>Runs inputs with the numbers from <paramref name="from"/> on.</summary>
    /// <param name="target">The kind.</param>
    /// <param name="seed">Seed of the campaign.</param>
    /// <param name="from">First number.</param>
    /// <param name="count">How many.</param>
    /// <param name="gaveUp">Told an input that does not end.</param>
    public static KindResult Run(Target target, int seed, long from, long count, Action<Failure> gaveUp)
    {
        KindResult result = new(target.Name);
        long number = from;
        byte[] input = [];
        using Watch watch = new(() => gaveUp(new(number, "does not end", input)));
        for (; number < from + count; number++)
        {
            Dice dice = Dice.Of(target.Name, seed, number);
            input = target.Make(dice);
            string? fault = One(target, input, dice, watch, result, out double took, out long bytes);
            result.Inputs++;
            if (took > result.Worst) (result.Worst, result.WorstNumber) = (took, number);
            result.Largest = Math.Max(result.Largest, bytes);
            if (fault is not null && result.Failures.Count < MostFailures) result.Failures.Add(new(number, fault, input));
        }
        return result;
    }

    private static string? One(Target target, byte[] input, Dice dice, Watch watch, KindResult result, out double took, out long bytes)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        string? fault = null;
        watch.Begin();
        try
        {
            if (target.Try(input, dice) == Verdict.Accepted) result.Accepted++;
            else result.Rejected++;
        }
        catch (UnexplainedException error)
        {
            result.Unexplained++;
            fault = "unexplained: " + error.Message;
        }
        catch (Exception error)
        {
            result.Crashes++;
            fault = "crash: " + error;
        }
        took = watch.End();
        bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        if (took > Watch.Limit)
        {
            result.Hangs++;
            fault ??= string.Create(CultureInfo.InvariantCulture, $"hang: {took:F1} s");
        }
        if (bytes > MostBytes)
        {
            result.Crashes++;
            fault ??= $"memory: {bytes} bytes";
        }
        return fault;
    }
}
