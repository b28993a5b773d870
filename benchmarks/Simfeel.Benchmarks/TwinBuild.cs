using System.ComponentModel;
using System.Diagnostics;

namespace Simfeel.Benchmarks;

/// <summary>Builds the C++ twin with cmake and loads it.</summary>
internal static class TwinBuild
{
    /// <summary>The twin, or null with a message on standard error where it cannot be built; then only C# is timed.</summary>
    public static Twin? Load()
    {
        string root = RepositoryRoot();
        string source = Path.Combine(root, "benchmarks", "twin"), build = Path.Combine(root, "artifacts", "twin");
        try
        {
            Directory.CreateDirectory(build);
            Run("cmake", "-S", source, "-B", build, "-DCMAKE_BUILD_TYPE=Release");
            Run("cmake", "--build", build);
            return new Twin(Path.Combine(build, "libsimfeel_twin.so"));
        }
        catch (Win32Exception)
        {
            Console.Error.WriteLine("No C++ columns: cmake was not found. Install cmake and g++ (Debian: apt-get install cmake g++).");
        }
        catch (InvalidOperationException failure)
        {
            Console.Error.WriteLine($"No C++ columns: {failure.Message} Is g++ installed (Debian: apt-get install cmake g++)?");
        }
        catch (DllNotFoundException failure)
        {
            Console.Error.WriteLine($"No C++ columns: the twin does not load. {failure.Message}");
        }
        return null;
    }

    /// <summary>The folder that holds the solution.</summary>
    public static string RepositoryRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Simfeel.sln"))) return at.FullName;
        }
        throw new DirectoryNotFoundException($"No Simfeel.sln above {AppContext.BaseDirectory}.");
    }

    private static void Run(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} failed.\n{output}{errors.Result}");
    }
}
