using System.Runtime.CompilerServices;

namespace Simfeel.Tests.Shared;

/// <summary>Part of every test assembly: tests, and the processes that they start, keep away from the user's cache on disk.</summary>
internal static class WithoutCache
{
    [ModuleInitializer]
    internal static void SwitchOff() => Environment.SetEnvironmentVariable("SIMFEEL_CACHE", "off");
}
