using Silk.NET.OpenGL;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Tests;

[Collection(WindowFixture.Collection)]
public class WindowFixtureTests(WindowFixture fixture)
{
    [Fact]
    public void Window_HasOpenGl33WithoutAScreen()
    {
        (string driver, int major, int minor) = fixture.Run(() =>
            (AppWindow.Driver, fixture.Gl.GetInteger(GLEnum.MajorVersion), fixture.Gl.GetInteger(GLEnum.MinorVersion)));
        Assert.Equal(Environment.GetEnvironmentVariable("SDL_VIDEODRIVER") ?? "offscreen", driver);
        Assert.True((10 * major) + minor >= 33, $"OpenGL {major}.{minor}");
    }

    [Fact]
    public void Run_GivesTheExceptionOfItsAction()
    {
        FormatException failure = Assert.Throws<FormatException>(() => fixture.Run(() => throw new FormatException("as thrown")));
        Assert.Equal("as thrown", failure.Message);
    }
}
