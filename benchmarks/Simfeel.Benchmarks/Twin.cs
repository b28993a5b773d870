using System.Runtime.InteropServices;
using Simfeel.Physics.Kernel;

namespace Simfeel.Benchmarks;

/// <summary>The C++ twin of the kernel, a shared library loaded into this process.</summary>
internal sealed unsafe class Twin : IDisposable
{
    private readonly nint _library;
    private readonly delegate* unmanaged<int, Blocks*, double, int, void> _midpoint, _rungeKutta;
    private readonly delegate* unmanaged<int, int, int> _size;

    /// <summary>Loads the library.</summary>
    public Twin(string path)
    {
        _library = NativeLibrary.Load(path);
        _midpoint = (delegate* unmanaged<int, Blocks*, double, int, void>)NativeLibrary.GetExport(_library, "simfeel_twin_midpoint");
        _rungeKutta = (delegate* unmanaged<int, Blocks*, double, int, void>)NativeLibrary.GetExport(_library, "simfeel_twin_runge_kutta");
        _size = (delegate* unmanaged<int, int, int>)NativeLibrary.GetExport(_library, "simfeel_twin_size");
        var compiler = (delegate* unmanaged<byte*>)NativeLibrary.GetExport(_library, "simfeel_twin_compiler");
        Compiler = Marshal.PtrToStringUTF8((nint)compiler()) ?? "";
    }

    /// <summary>Blocks of memory whose layout both languages share.</summary>
    public enum Block
    {
        Lane,
        Craft,
        Field,
        Load,
    }

    /// <summary>Name and version of the compiler.</summary>
    public string Compiler { get; }

    /// <summary>Bytes of a block, 0 for a width that the twin was not built for.</summary>
    public int SizeOf(int width, Block block) => _size(width, (int)block);

    /// <summary>Moves the state by a number of steps.</summary>
    public void Step(Integrator integrator, int width, Blocks* blocks, double step, int steps)
    {
        if (integrator == Integrator.Midpoint) _midpoint(width, blocks, step, steps);
        else _rungeKutta(width, blocks, step, steps);
    }

    /// <inheritdoc/>
    public void Dispose() => NativeLibrary.Free(_library);

    /// <summary>Addresses of all that a step works on.</summary>
    [StructLayout(LayoutKind.Sequential)]
    public struct Blocks
    {
        public void* X, Dx, Command, Craft, Field, Load, Scratch;
    }
}
