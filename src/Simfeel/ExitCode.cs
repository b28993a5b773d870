namespace Simfeel.CommandLine;

/// <summary>What the program ends with.</summary>
internal static class ExitCode
{
    /// <summary>All went well.</summary>
    public const int Ok = 0;

    /// <summary>A file or a number in it is wrong.</summary>
    public const int BadInput = 1;

    /// <summary>The command line is wrong.</summary>
    public const int Misuse = 2;

    /// <summary>Something of the machine is missing.</summary>
    public const int Environment = 3;

    /// <summary>A flight broke an invariant: an error of the program.</summary>
    public const int Fault = 4;
}
