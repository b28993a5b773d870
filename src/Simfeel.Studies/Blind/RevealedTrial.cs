namespace Simfeel.Studies.Blind;

/// <summary>A voted trial with its truth.</summary>
/// <param name="Trial">Number in its session, counted from 1.</param>
/// <param name="Control">Whether every flight was the same build, so that being right was luck.</param>
/// <param name="Order">The build of each flight as A or B, such as ABA.</param>
/// <param name="Answer">The vote in words, one of <see cref="BlindTest.Choices"/>.</param>
/// <param name="Right">Whether the vote was right.</param>
public sealed record RevealedTrial(int Trial, bool Control, string Order, string Answer, bool Right);
