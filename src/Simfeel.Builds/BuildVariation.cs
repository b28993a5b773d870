using System.Collections.Immutable;
using Simfeel.Builds.Estimates;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds;

/// <summary>
/// Moves numbers of a build within their bands, as what is not known well may lie: numbers that the file gave with a low and a
/// high end, and estimates within the spread of their rule. What follows by rule from a number that moved moves with it.
/// </summary>
public static class BuildVariation
{
    /// <summary>The numbers of a build that have a band.</summary>
    public static IEnumerable<BuildValue> Uncertain(Build build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build.Values.Where(value => value.High > value.Low);
    }

    /// <summary>The build with numbers moved within their bands.</summary>
    /// <param name="build">A build that was read or edited, not a hybrid.</param>
    /// <param name="places">Full keys and where in its band each lies: -1 low end, 0 typical, 1 high end, straight in between.</param>
    /// <returns>The new build, or diagnostics where the numbers no longer go together.</returns>
    /// <exception cref="ArgumentException">The build is a hybrid.</exception>
    public static BuildResult Move(Build build, IEnumerable<KeyValuePair<string, double>> places)
    {
        BuildSheet sheet = BuildEditor.SheetOf(build);
        DiagnosticBag bag = new(sheet.SourceName);
        Build? moved = BuildFactory.Make(sheet with { Places = places.ToImmutableDictionary(StringComparer.Ordinal) }, bag);
        return new(moved, bag.InOrder());
    }
}
