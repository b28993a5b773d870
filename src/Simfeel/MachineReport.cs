using System.Reflection.PortableExecutable;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics.X86;
using Simfeel.Builds;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Plots;
using SkiaSharp;

namespace Simfeel.CommandLine;

/// <summary>What of this machine matters to Simfeel; what is missing is named with what needs it and the Debian package that has it.</summary>
internal static class MachineReport
{
    /// <summary>Keys and what stands behind them, in order.</summary>
    public static Dictionary<string, object?> Make()
    {
        PilotProfile profile = new();
        (int tables, long bytes) = RotorTableStore.Default?.Contents() ?? (0, 0);
        return new()
        {
            ["simfeel"] = CommandLineApp.Version,
            ["machine_code"] = Code(),
            ["runtime"] = RuntimeInformation.FrameworkDescription,
            ["system"] = RuntimeInformation.OSDescription,
            ["architecture"] = RuntimeInformation.ProcessArchitecture.ToString(),
            ["cores"] = Environment.ProcessorCount,
            ["memory_MB"] = GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1_000_000,
            ["instruction_sets"] = InstructionSets(),
            ["widest_double_lanes"] = DrillBatch.Width,
            ["starter_builds"] = BuildLibrary.StarterNames.Count,
            ["rotor_table_cache"] = RotorTableStore.Default?.Folder ?? $"off ({RotorTableStore.Variable}=off, or no home folder)",
            ["cached_rotor_tables"] = tables,
            ["cached_rotor_tables_MB"] = Math.Round(bytes / 1e6, 1),
            ["free_for_the_cache_MB"] = RotorTableStore.Default is { } store ? FreeAt(store.Folder) : null,
            ["display"] = Display(),
            ["window_library_sdl2"] = Sdl(),
            ["opengl_library"] = Loads("libGL.so.1", "the window", "libgl1 libgl1-mesa-dri"),
            ["egl_library"] = Loads("libEGL.so.1", "pictures without a display", "libegl1"),
            ["fontconfig_library"] = Loads("libfontconfig.so.1", "window, plots and pictures", "fontconfig"),
            ["font"] = Typeface(),
            ["stick_reading_s"] = profile.StickPeriod,
            ["radio_delay_s"] = profile.RadioDelay,
            ["control_loop_s"] = profile.LoopPeriod,
            ["physics_step_s"] = 1.0 / profile.StepRate,
        };
    }

    private static string Code()
    {
        string assembly = Path.Combine(AppContext.BaseDirectory, "simfeel.dll");
        if (File.Exists(Path.ChangeExtension(assembly, ".r2r.dll"))) return "made in advance, together with the framework";
        using FileStream file = File.OpenRead(assembly);
        using PEReader image = new(file);
        return image.PEHeaders.CorHeader?.ManagedNativeHeaderDirectory.Size > 0 ? "made in advance, without the framework" : "made when a method is first called";
    }

    private static string InstructionSets()
    {
        (string Name, bool Has)[] sets =
        [
            ("SSE4.2", Sse42.IsSupported), ("AVX", Avx.IsSupported), ("AVX2", Avx2.IsSupported), ("FMA", Fma.IsSupported), ("AVX-512F", Avx512F.IsSupported),
        ];
        string[] there = [.. sets.Where(set => set.Has).Select(set => set.Name)];
        return there.Length > 0 ? string.Join(", ", there) : "none of x86";
    }

    /// <summary>Free room where a folder is or would be, MB; null where the system does not tell.</summary>
    private static long? FreeAt(string folder)
    {
        try
        {
            DirectoryInfo? there = new(folder);
            while (there is { Exists: false }) there = there.Parent;
            return there is null ? null : new DriveInfo(there.FullName).AvailableFreeSpace / 1_000_000;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }

    private static string Display()
    {
        string? wayland = Environment.GetEnvironmentVariable("WAYLAND_DISPLAY"), x = Environment.GetEnvironmentVariable("DISPLAY");
        return !string.IsNullOrEmpty(wayland) ? wayland : !string.IsNullOrEmpty(x) ? x : "none; fly needs one, everything else works without";
    }

    private static string Sdl() =>
        AppWindow.LibraryVersion is { } version ? $"found, {version}" : Missing("window, sticks and sound", "libsdl2-2.0-0");

    private static string Loads(string library, string neededFor, string package)
    {
        if (!NativeLibrary.TryLoad(library, out nint handle)) return Missing(neededFor, package);
        NativeLibrary.Free(handle);
        return "found";
    }

    private static string Typeface()
    {
        try
        {
            using SKTypeface? face = SKFontManager.Default.MatchFamily(PlotFonts.Family);
            return face?.FamilyName == PlotFonts.Family ? $"{PlotFonts.Family}, found" : $"{PlotFonts.Family} is missing; another one stands in for it. Debian: apt-get install fonts-dejavu-core";
        }
        catch (Exception e) when (e is TypeInitializationException or DllNotFoundException)
        {
            return "cannot be looked for without fontconfig";
        }
    }

    private static string Missing(string neededFor, string package) => $"missing; needed for {neededFor}. Debian: apt-get install {package}";
}
