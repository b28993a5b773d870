using System.Diagnostics;
using System.Runtime.InteropServices;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Sound;
using Simfeel.Physics;

namespace Simfeel.Cockpit.Tests.Sound;

[Collection(WindowFixture.Collection)]
public class SoundDeviceTests(WindowFixture fixture)
{
    private static readonly SoundMoment Moment = new()
    {
        RotorCount = 4,
        Blades = 3,
        Radius = 0.0635,
        Speeds = PerRotor.All(1100),
        Thrusts = PerRotor.All(2),
    };

    [Fact]
    public void Fifty_milliseconds_are_queued_and_nothing_is_allocated() => fixture.Run(() =>
    {
        using SoundDevice device = new();
        RotorSound sound = new() { Gain = 1 };
        Assert.True(device.IsOpen, device.Problem);
        Assert.Equal("", device.Problem);
        device.Feed(sound, Moment);
        Assert.InRange(device.Waiting_s, 0, SoundDevice.Queued_s);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int frame = 0; frame < 20; frame++)
        {
            device.Feed(sound, Moment);
            Thread.Sleep(5);
        }
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.InRange(device.Waiting_s, 0, SoundDevice.Queued_s);
    });

    [Fact]
    public void What_is_made_comes_out_of_the_device() => fixture.Run(() =>
    {
        using TempFolder folder = new();
        string file = System.IO.Path.Combine(folder.Path, "sound.raw");
        _ = Sdl.SDL_setenv("SDL_DISKAUDIOFILE", file, 1);
        WithDriver("disk", () =>
        {
            using SoundDevice device = new();
            Assert.True(device.IsOpen, device.Problem);
            Assert.Equal("disk", device.Driver);
            RotorSound sound = new() { Gain = 1 };
            Stopwatch watch = Stopwatch.StartNew();
            while ((!File.Exists(file) || new FileInfo(file).Length < 20_000) && watch.Elapsed < TimeSpan.FromSeconds(20))
            {
                device.Feed(sound, Moment);
                Thread.Sleep(10);
            }
        });
        ReadOnlySpan<float> heard = MemoryMarshal.Cast<byte, float>(File.ReadAllBytes(file));
        Assert.True(heard.Length > 2400);
        float loudest = 0;
        foreach (float sample in heard) loudest = Math.Max(loudest, Math.Abs(sample));
        Assert.InRange(loudest, 0.01f, 1f);
    });

    [Fact]
    public void Without_a_device_there_is_one_sentence_and_silence() => fixture.Run(() => WithDriver("nosuchdriver", () =>
    {
        using SoundDevice device = new();
        Assert.False(device.IsOpen);
        Assert.StartsWith("There is no sound (", device.Problem, StringComparison.Ordinal);
        device.Feed(new RotorSound { Gain = 1 }, Moment);
        Assert.Equal(0, device.Waiting_s);
    }));

    private static void WithDriver(string driver, Action action)
    {
        string before = Environment.GetEnvironmentVariable("SDL_AUDIODRIVER") ?? "dummy";
        _ = Sdl.SDL_SetHint("SDL_AUDIODRIVER", driver);
        try
        {
            action();
        }
        finally
        {
            _ = Sdl.SDL_SetHint("SDL_AUDIODRIVER", before);
        }
    }
}
