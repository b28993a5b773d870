using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Simfeel.Cockpit.Platform;

/// <summary>
/// The sound library of Linux prints a dozen lines of its own where there is no device. One sentence of ours says it, so
/// its lines are dropped.
/// </summary>
internal static unsafe partial class Alsa
{
    /// <summary>Stops the library's lines; does nothing on systems without it.</summary>
    public static void Hush()
    {
        if (!OperatingSystem.IsLinux()) return;
        try
        {
            snd_lib_error_set_handler(&Drop);
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            // SDL then speaks to another sound system
        }
    }

    [LibraryImport("libasound.so.2")]
    private static partial int snd_lib_error_set_handler(delegate* unmanaged[Cdecl]<byte*, int, byte*, int, byte*, void> handler);

    // the handler's further arguments are those of its format, which nobody reads here
    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void Drop(byte* file, int line, byte* function, int error, byte* format)
    {
    }
}
