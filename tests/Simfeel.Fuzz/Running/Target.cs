namespace Simfeel.Fuzz.Running;

/// <summary>What the program said to an input.</summary>
internal enum Verdict
{
    /// <summary>It was refused with place and reason.</summary>
    Rejected,

    /// <summary>It was taken, and what was made of it is right as far as the oracle can tell.</summary>
    Accepted,
}

/// <summary>An input was taken that should have been refused, or refused without place or reason.</summary>
internal sealed class UnexplainedException(string message) : Exception(message);

/// <summary>One kind of input: how inputs are made, and the reader that takes them.</summary>
internal abstract class Target
{
    /// <summary>Name of the kind.</summary>
    public abstract string Name { get; }

    /// <summary>Share of this kind in a campaign, in parts of a thousand.</summary>
    public abstract int Weight { get; }

    /// <summary>Ending of an input as a file, with its dot.</summary>
    public abstract string Ending { get; }

    /// <summary>An input.</summary>
    public abstract byte[] Make(Dice dice);

    /// <summary>Hands an input to the program as the program would meet it, and what was taken on to its use.</summary>
    /// <param name="input">The input.</param>
    /// <param name="dice">Decides whether what was taken is carried on to what costs much.</param>
    /// <exception cref="UnexplainedException">The oracle objects. Any other exception is a crash.</exception>
    public abstract Verdict Try(byte[] input, Dice dice);

    /// <summary>Whether seed and number say that this input goes on to what costs much; a case replayed by hand always does.</summary>
    protected static bool Deep(Dice dice, int onceIn) => Always || dice.Once(onceIn);

    /// <summary>Everything is carried on to its end, whatever it costs.</summary>
    public static bool Always { get; set; }
}
