using Simfeel.Studies.Compare;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>What a caller without the compiler's null checks sees; the others fail at their first look at it or keep it.</summary>
public class ApprovedNullGuardTests
{
    [Fact]
    public void Arguments_that_are_refused_by_name_when_null() => ApprovedPage.Check(
        "null-guards.txt",
        string.Join('\n', NullGuards.Of(typeof(Comparison).Assembly).Guarded) + "\n");
}
