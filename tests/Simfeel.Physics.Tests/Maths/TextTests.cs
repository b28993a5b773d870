using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Maths;

public class TextTests
{
    [Fact]
    public void Values_with_properties_of_their_own_type_print_without_end_of_the_stack()
    {
        Assert.Equal("[1, 2, 3; 4, 5, 6; 7, 8, 9]", new Mat3(1, 2, 3, 4, 5, 6, 7, 8, 9).ToString());
        Assert.Equal("(1; 0.5, -2, 0)", new Quat(1, 0.5, -2, 0).ToString());
    }
}
