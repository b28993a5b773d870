using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Sound;

/// <summary>
/// The loudspeaker: keeps about 50 ms of sound queued, so that a late frame is not heard. Without a device all is silent
/// and <see cref="Problem"/> says so once. Used on the window's thread; nothing is allocated after construction.
/// </summary>
public sealed unsafe class SoundDevice : IDisposable
{
    /// <summary>Sound that is kept queued, s.</summary>
    public const double Queued_s = 0.05;

    // AUDIO_F32SYS of SDL_audio.h for little and big endian
    private const ushort Float32Little = 0x8120, Float32Big = 0x9120;

    // 256 samples are 5 ms: the device asks often, so that what is queued is known well
    private const ushort DeviceBuffer = 256;

    private readonly float[] _samples = new float[(int)(2 * Queued_s * RotorSound.Rate)];
    private readonly bool _subsystem;
    private uint _device;
    private double _impact;

    /// <summary>Opens the system's usual device.</summary>
    public SoundDevice()
    {
        Alsa.Hush();
        if (!Sdl.IsThere || Sdl.SDL_InitSubSystem(Sdl.InitAudio) != 0)
        {
            Problem = Silent();
            return;
        }
        _subsystem = true;
        SdlAudioSpec want = new()
        {
            Frequency = RotorSound.Rate,
            Format = BitConverter.IsLittleEndian ? Float32Little : Float32Big,
            Channels = 1,
            Samples = DeviceBuffer,
        };
        SdlAudioSpec have;
        // no change is allowed: SDL converts where the device wants something else
        _device = Sdl.SDL_OpenAudioDevice(null, 0, &want, &have, 0);
        if (_device == 0)
        {
            Problem = Silent();
            return;
        }
        Sdl.SDL_PauseAudioDevice(_device, 0);
    }

    /// <summary>Why there is no sound, in one sentence; empty where there is.</summary>
    public string Problem { get; private set; } = "";

    /// <summary>There is sound.</summary>
    public bool IsOpen => _device != 0;

    /// <summary>Sound that waits to be played, s.</summary>
    public double Waiting_s => _device == 0 ? 0 : Sdl.SDL_GetQueuedAudioSize(_device) / (double)(sizeof(float) * RotorSound.Rate);

    /// <summary>How often the queue had run dry when a frame came.</summary>
    public long RanDry { get; private set; }

    /// <summary>Name of the sound driver that SDL chose; empty for none.</summary>
    public string Driver => _subsystem ? Sdl.Text(Sdl.SDL_GetCurrentAudioDriver()) : "";

    /// <summary>Fills the queue up; once a frame.</summary>
    public void Feed(RotorSound sound, in SoundMoment now)
    {
        ArgumentNullException.ThrowIfNull(sound);
        if (_device == 0) return;
        // an impact in a frame that needs no samples is heard with the next ones
        _impact = Math.Max(_impact, now.Impact);
        double waiting = Waiting_s;
        if (waiting <= 0) RanDry++;
        int length = Math.Min((int)((Queued_s - waiting) * RotorSound.Rate), _samples.Length);
        if (length <= 0) return;
        SoundMoment heard = now;
        heard.Impact = _impact;
        _impact = 0;
        sound.Fill(_samples.AsSpan(0, length), heard);
        fixed (float* samples = _samples)
        {
            if (Sdl.SDL_QueueAudio(_device, samples, (uint)(length * sizeof(float))) == 0) return;
        }
        // the device went away in flight
        Problem = Silent();
        Close();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Close();
        if (_subsystem) Sdl.SDL_QuitSubSystem(Sdl.InitAudio);
    }

    private void Close()
    {
        if (_device != 0) Sdl.SDL_CloseAudioDevice(_device);
        _device = 0;
    }

    private static string Silent() =>
        $"There is no sound ({(Sdl.IsThere ? Sdl.Error.TrimEnd('.') : "SDL 2 is missing")}); the flight goes on in silence.";
}
