using System.Collections.Concurrent;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Tests;

/// <summary>
/// The one hidden window of the test process, offscreen, with the one thread that its OpenGL context belongs to. A test
/// class takes it with <c>[Collection(WindowFixture.Collection)]</c> and a constructor parameter, and does all that touches
/// SDL or OpenGL inside <see cref="Run(Action)"/>.
/// </summary>
public sealed class WindowFixture : IDisposable
{
    public const string Collection = "window";

    private readonly BlockingCollection<Action> _work = [];
    private readonly Thread _thread;
    private AppWindow? _window;

    public WindowFixture()
    {
        _thread = new(Serve) { IsBackground = true, Name = "window" };
        _thread.Start();
        try
        {
            Run(Open);
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>The window; use it inside <see cref="Run(Action)"/> only.</summary>
    public AppWindow Window => _window ?? throw new ObjectDisposedException(nameof(WindowFixture));

    /// <summary>OpenGL of the window; use it inside <see cref="Run(Action)"/> only.</summary>
    public GL Gl => Window.Gl;

    /// <summary>Runs something on the window's thread and waits for it; its exception comes out here.</summary>
    public void Run(Action action) => Run(() =>
    {
        action();
        return 0;
    });

    /// <summary>Runs something on the window's thread and gives its result.</summary>
    public T Run<T>(Func<T> action)
    {
        if (Thread.CurrentThread == _thread) return action();
        TaskCompletionSource<T> done = new(TaskCreationOptions.RunContinuationsAsynchronously);
        _work.Add(() =>
        {
            try
            {
                done.SetResult(action());
            }
            catch (Exception failure)
            {
                done.SetException(failure);
            }
        });
        return done.Task.GetAwaiter().GetResult();
    }

    public void Dispose()
    {
        if (_work.IsAddingCompleted) return;
        Run(() => _window?.Dispose());
        _work.CompleteAdding();
        _thread.Join();
        _work.Dispose();
    }

    private void Open()
    {
        // A hint and not Environment.SetEnvironmentVariable, which native code does not see on Unix. A variable set
        // outside goes before the hint.
        Sdl.SDL_SetHint("SDL_VIDEODRIVER", "offscreen");
        Sdl.SDL_SetHint("SDL_AUDIODRIVER", "dummy");
        _window = new("tests", 640, 360, visible: false);
    }

    private void Serve()
    {
        foreach (Action action in _work.GetConsumingEnumerable()) action();
    }
}

[CollectionDefinition(WindowFixture.Collection)]
public sealed class WindowTests : ICollectionFixture<WindowFixture>;
