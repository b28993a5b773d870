namespace Simfeel.Studies.Sweep;

/// <summary>Results of the rows of one block.</summary>
/// <param name="Index">Which block.</param>
/// <param name="Values">By row, then by metric: SI, NaN where there is none.</param>
/// <param name="Refusals">By row: why there are none; empty where there are.</param>
public sealed record SweepBlock(int Index, double[][] Values, string[] Refusals);
