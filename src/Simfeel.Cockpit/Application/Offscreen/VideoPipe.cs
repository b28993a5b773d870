using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using Simfeel.Builds.Writing;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Application.Offscreen;

/// <summary>Hands pictures to ffmpeg, which makes a video file of them.</summary>
internal sealed class VideoPipe : IDisposable
{
    private readonly Process _process;
    private readonly UnfinishedFile _unfinished;
    private readonly string _file;

    /// <summary>Starts ffmpeg.</summary>
    /// <param name="file">Video file; the ending says which kind, such as .mp4. One that is there is replaced when the video is whole.</param>
    /// <param name="width">Width, pixels; even.</param>
    /// <param name="height">Height, pixels; even.</param>
    /// <param name="rate">Pictures a second.</param>
    /// <exception cref="MissingOnMachineException">There is no ffmpeg.</exception>
    public VideoPipe(string file, int width, int height, int rate)
    {
        _file = file;
        _unfinished = new(file, Path.GetExtension(file));
        ProcessStartInfo start = new("ffmpeg") { RedirectStandardInput = true, RedirectStandardError = true };
        string size = string.Create(CultureInfo.InvariantCulture, $"{width}x{height}");
        string frames = rate.ToString(CultureInfo.InvariantCulture);
        // players on phones and in browsers want 4:2:0
        string[] arguments =
        [
            "-hide_banner", "-loglevel", "error", "-y", "-f", "rawvideo", "-pix_fmt", "rgba", "-s", size, "-r", frames, "-i", "-",
            "-pix_fmt", "yuv420p", _unfinished.Path,
        ];
        foreach (string argument in arguments) start.ArgumentList.Add(argument);
        try
        {
            _process = Process.Start(start)!;
        }
        catch (Win32Exception)
        {
            throw new MissingOnMachineException("A video needs ffmpeg, which is missing. On Debian and Ubuntu: sudo apt-get install ffmpeg");
        }
    }

    /// <summary>Adds a picture: rows from the top, red, green, blue and opacity, a byte each.</summary>
    /// <exception cref="IOException">ffmpeg gave up; the message holds its own words.</exception>
    public void Add(ReadOnlySpan<byte> picture)
    {
        try
        {
            _process.StandardInput.BaseStream.Write(picture);
        }
        catch (IOException)
        {
            throw Failed();
        }
    }

    /// <summary>Ends the video.</summary>
    /// <exception cref="IOException">ffmpeg gave up; the message holds its own words.</exception>
    public void Finish()
    {
        try
        {
            _process.StandardInput.Close();
        }
        catch (IOException)
        {
            // what it says at its end tells more
        }
        _process.WaitForExit();
        if (_process.ExitCode != 0) throw Failed();
        _unfinished.Keep();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            _process.WaitForExit();
        }
        _process.Dispose();
        _unfinished.Dispose();
    }

    private IOException Failed() => new($"{_file}: ffmpeg could not make the video: {_process.StandardError.ReadToEnd().Trim().Replace(_unfinished.Path, _file, StringComparison.Ordinal)}");
}
