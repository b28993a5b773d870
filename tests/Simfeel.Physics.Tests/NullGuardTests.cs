using Simfeel.Physics.Mass;

namespace Simfeel.Physics.Tests;

/// <summary>What a caller without the compiler's null checks sees.</summary>
public class NullGuardTests
{
    [Fact]
    public void Every_public_method_names_the_argument_that_is_null()
    {
        (IReadOnlyList<string> guarded, IReadOnlyList<string> others) = NullGuards.Of(typeof(MassProperties).Assembly);
        Assert.Empty(others);
        Assert.NotEmpty(guarded);
    }
}
