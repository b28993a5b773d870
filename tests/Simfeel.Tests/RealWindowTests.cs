using System.Diagnostics;
using Simfeel.Flight;
using Simfeel.Flight.Traces;

namespace Simfeel.Tests;

/// <summary>The program in a real window on an X server of its own, typed at as a pilot would. Needs xvfb and xdotool.</summary>
public sealed class RealWindowTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly List<Process> _started = [];
    private string _display = "";

    [Fact]
    public void By_keyboard_from_the_start_page_to_a_landed_flight()
    {
        StartServer();
        string trace = _folder.File("flight.arrow");
        Process program = Start("dotnet", [typeof(CommandLine.ExitCode).Assembly.Location, "fly", "--record", trace, "--size", "640x360"]);
        WaitFor(() => Type("search", "--name", "^Simfeel$") == 0, 60, "no window came up");
        // the first pictures take long while everything is compiled, and keys before the first one go nowhere
        Thread.Sleep(4000);
        Type("search", "--name", "^Simfeel$", "windowfocus");
        Thread.Sleep(500);

        for (int n = 0; n < 4; n++) Tap("Tab");
        Tap("Return");
        WaitFor(() => File.Exists(trace), 60, "the flight did not begin");
        Thread.Sleep(500);
        Tap("space");
        Hold("w", 1.2);
        Thread.Sleep(500);
        Hold("s", 6);
        Tap("space");
        Thread.Sleep(500);
        Tap("Escape");
        // the menu's last button ends the flight; then what was found is shown, and the start page's last button quits
        for (int n = 0; n < 12; n++) Tap("Tab");
        Tap("Return");
        Thread.Sleep(500);
        for (int n = 0; n < 3; n++) Tap("Escape");

        Assert.True(program.WaitForExit(20000), "the program did not end");
        Assert.Equal(0, program.ExitCode);
        (double highest, bool crashed, double lastHeight, double lastSpeed) = Read(trace);
        Assert.True(highest > 1, $"it did not take off: {highest} m");
        Assert.False(crashed);
        Assert.InRange(lastHeight, 0, 0.3);
        Assert.True(lastSpeed < 0.2, $"it still moved at {lastSpeed} m/s");
    }

    public void Dispose()
    {
        foreach (Process process in Enumerable.Reverse(_started))
        {
            if (!process.HasExited) process.Kill();
            process.Dispose();
        }
        _folder.Dispose();
    }

    /// <summary>Flies the trace again for what it shows: highest place, any crash, height and speed at its end.</summary>
    private static (double Highest, bool Crashed, double LastHeight, double LastSpeed) Read(string trace)
    {
        using TraceReader reader = TraceReader.Open(trace);
        using Replay replay = new(reader);
        double highest = 0;
        bool crashed = false;
        while (replay.TryNext(out PilotInput input))
        {
            replay.Session.Fly(input);
            highest = Math.Max(highest, -replay.Session.State(0).p_WB.Z);
            crashed |= replay.Session.Condition(0).Crashed;
        }
        return (highest, crashed, -replay.Session.State(0).p_WB.Z, replay.Session.State(0).v_WB.Length);
    }

    private void StartServer()
    {
        for (int number = 90; number < 120 && _display.Length == 0; number++)
        {
            if (File.Exists($"/tmp/.X{number}-lock")) continue;
            Process server = Start("Xvfb", [$":{number}", "-screen", "0", "800x600x24", "-nolisten", "tcp"]);
            for (int n = 0; n < 100 && !server.HasExited; n++)
            {
                _display = $":{number}";
                if (Type("getdisplaygeometry") == 0) return;
                Thread.Sleep(50);
            }
            _display = "";
        }
        Assert.Fail("No X server could be started: sudo apt-get install xvfb xdotool");
    }

    private Process Start(string file, string[] arguments)
    {
        ProcessStartInfo start = new(file, arguments) { RedirectStandardError = true };
        start.Environment["DISPLAY"] = _display;
        start.Environment["SIMFEEL_CONFIG"] = _folder.File("config");
        start.Environment["SDL_AUDIODRIVER"] = "dummy";
        start.Environment["SDL_VIDEODRIVER"] = "x11";
        Process process = Process.Start(start)!;
        process.BeginErrorReadLine();
        _started.Add(process);
        return process;
    }

    private int Type(params string[] arguments)
    {
        ProcessStartInfo start = new("xdotool", arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DISPLAY"] = _display;
        using Process process = Process.Start(start)!;
        process.WaitForExit();
        return process.ExitCode;
    }

    private void Tap(string key)
    {
        Assert.Equal(0, Type("key", "--delay", "60", key));
        Thread.Sleep(150);
    }

    private void Hold(string key, double seconds)
    {
        Assert.Equal(0, Type("keydown", key));
        Thread.Sleep(TimeSpan.FromSeconds(seconds));
        Assert.Equal(0, Type("keyup", key));
    }

    private static void WaitFor(Func<bool> holds, double seconds, string what)
    {
        long begin = Stopwatch.GetTimestamp();
        while (!holds())
        {
            Assert.True(Stopwatch.GetElapsedTime(begin).TotalSeconds < seconds, what);
            Thread.Sleep(200);
        }
    }
}
