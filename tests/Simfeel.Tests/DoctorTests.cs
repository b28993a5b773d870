using System.Text.Json;

namespace Simfeel.Tests;

/// <summary><c>doctor</c> says of the machine what the system says.</summary>
public class DoctorTests
{
    private static readonly Lazy<JsonElement> Report = new(() => JsonDocument.Parse(Cli.Run("doctor", "--json").Output).RootElement);

    [Fact]
    public void It_tells_of_the_program_and_its_delays()
    {
        Assert.True(Report.Value.GetProperty("starter_builds").GetInt32() >= 12);
        Assert.Equal(0.004, Report.Value.GetProperty("radio_delay_s").GetDouble());
        // dotnet build makes no machine code in advance
        Assert.Equal("made when a method is first called", Word("machine_code"));
        Assert.Equal(JsonValueKind.Null, Report.Value.GetProperty("free_for_the_cache_MB").ValueKind);
        Assert.StartsWith("off", Word("rotor_table_cache"), StringComparison.Ordinal);
    }

    [Fact]
    public void Processor_and_memory_are_those_of_the_kernels_books()
    {
        Assert.Equal(Environment.ProcessorCount, Report.Value.GetProperty("cores").GetInt32());
        string flags = File.ReadLines("/proc/cpuinfo").First(line => line.StartsWith("flags", StringComparison.Ordinal)) + " ";
        foreach ((string name, string flag) in (ReadOnlySpan<(string, string)>)[("SSE4.2", "sse4_2"), ("AVX2", "avx2"), ("FMA", "fma"), ("AVX-512F", "avx512f")])
            Assert.Equal(flags.Contains($" {flag} ", StringComparison.Ordinal), Word("instruction_sets").Split(", ").Contains(name));
        long total = long.Parse(File.ReadLines("/proc/meminfo").First().Split(' ', StringSplitOptions.RemoveEmptyEntries)[1]) * 1024 / 1_000_000;
        Assert.InRange(Report.Value.GetProperty("memory_MB").GetInt64(), 1, total + 1);
    }

    /// <summary>The tests need all of it, so it is there; the version is that of the library's file.</summary>
    [Fact]
    public void Libraries_and_letters_are_found()
    {
        Assert.Matches(@"^found, 2\.\d+\.\d+$", Word("window_library_sdl2"));
        Assert.All((string[])["opengl_library", "egl_library", "fontconfig_library"], key => Assert.Equal("found", Word(key)));
        Assert.Equal("DejaVu Sans, found", Word("font"));
    }

    [Fact]
    public void Without_a_cache_folder_the_room_is_that_of_the_folder_above()
    {
        string folder = Path.Combine(Path.GetTempPath(), $"simfeel-none-{Environment.ProcessId}", "a", "b");
        CliResult result = Cli.RunIn("", "", new Dictionary<string, string> { ["SIMFEEL_CACHE"] = folder, ["WAYLAND_DISPLAY"] = "", ["DISPLAY"] = "" }, "doctor", "--json");
        JsonElement root = JsonDocument.Parse(result.Output).RootElement;
        Assert.True(root.GetProperty("free_for_the_cache_MB").GetInt64() > 0);
        Assert.StartsWith("none; ", root.GetProperty("display").GetString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    private static string Word(string key) => Report.Value.GetProperty(key).GetString()!;
}
