using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Tests.Platform;

/// <summary>SDL's raw events and what is made of them.</summary>
[Collection(WindowFixture.Collection)]
public class AppWindowTests(WindowFixture fixture)
{
    [Fact]
    public unsafe void Events_of_keys_and_pointer_come_through() => fixture.Run(() =>
    {
        while (AppWindow.TryNext(out _)) { }
        // types and places of the fields: SDL_events.h
        Push(new() { Type = 0x300, Scancode = 21 });
        Push(new() { Type = 0x300, Scancode = 21, State = 1, Part = 1 });
        Push(new() { Type = 0x301, Scancode = 21 });
        Push(new() { Type = 0x401, MouseButton = 1, X = 30, Y = 40 });
        Push(new() { Type = 0x200, Part = 6, Data1 = 1, Data2 = 2 });
        Push(new() { Type = 0x100 });
        Expect(new(WindowEventKind.KeyDown, 21));
        Expect(new(WindowEventKind.KeyDown, 21, Value: 1));
        Expect(new(WindowEventKind.KeyUp, 21));
        Expect(new(WindowEventKind.PointerDown, 1, X: 30, Y: 40));
        // the size in pixels is asked for; the event has it in units of the desktop
        (int width, int height) = fixture.Window.Size;
        Expect(new(WindowEventKind.Resized, X: width, Y: height));
        Expect(new(WindowEventKind.Quit));
        Assert.False(AppWindow.TryNext(out _));

        static void Push(SdlEvent raw) => Assert.Equal(1, Sdl.SDL_PushEvent(&raw));

        static void Expect(WindowEvent wanted)
        {
            Assert.True(AppWindow.TryNext(out WindowEvent happened));
            Assert.Equal(wanted, happened);
        }
    });
}
