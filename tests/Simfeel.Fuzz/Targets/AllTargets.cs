using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Targets;

/// <summary>All kinds of input.</summary>
internal static class AllTargets
{
    /// <summary>New targets of all kinds; their weights make a thousand.</summary>
    public static IReadOnlyList<Target> Make() =>
    [
        new BuildTarget(), new PropellerTarget(), new FieldTarget(), new LessonTarget(), new BenchTarget(), new StandTarget(), new VotesTarget(), new ClassLogTarget(),
        new TraceTarget(), new SweepTarget(), new SettingsTarget(), new CacheTarget(), new CommandTarget(),
    ];
}
