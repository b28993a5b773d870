using System.Diagnostics;
using System.Diagnostics.Tracing;
using System.Reflection;
using System.Runtime.Intrinsics;
using System.Runtime.Loader;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Xunit.Abstractions;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Tests that must not share the process with others while they run.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;

/// <summary>
/// Every lane operation in the kernel must be inlined: one call left over costs more than the arithmetic around it.
/// The runtime tells of every inline that failed while a method is compiled at full optimisation.
/// </summary>
[Collection(nameof(Alone))]
public class InliningTests(ITestOutputHelper output)
{
    [Fact]
    public void Nothing_in_the_kernel_fails_to_inline_at_full_optimisation()
    {
        Assembly physics = typeof(Kernel<>).Assembly;
        if (physics.GetCustomAttribute<DebuggableAttribute>() is { IsJITOptimizerDisabled: true })
        {
            output.WriteLine("Not checked: this build of the physics switches the optimiser off (Debug). Run it in Release.");
            return;
        }

        // Other tests have long compiled the kernel of this process, so a second copy of the assemblies is loaded and
        // driven until the tiered compiler has been through all of it.
        SecondCopy copy = new(physics);
        Type runs = copy.LoadFromAssemblyPath(typeof(HashRun).Assembly.Location).GetType(typeof(HashRun).FullName!)!;
        MethodInfo drive = runs.GetMethod(nameof(HashRun.Drive))!;

        using InlineListener listener = new(LaneTypes());
        HashSet<string> wanted = [.. Stages().SelectMany(stage => LaneTypes().Select(lane => $"{lane}.{stage}"))];
        Stopwatch patience = Stopwatch.StartNew();
        while (!listener.Compiled.IsSupersetOf(wanted) && patience.Elapsed < TimeSpan.FromSeconds(60))
        {
            drive.Invoke(null, [100]);
            Thread.Sleep(50);
        }

        Thread.Sleep(300); // events arrive on a thread of their own; the last method's may still be on their way
        wanted.ExceptWith(listener.Compiled);
        Assert.True(wanted.Count == 0, "Never seen at full optimisation: " + string.Join(", ", wanted));
        string[] failed = listener.Failed(DeliberatelyApart());
        Assert.True(failed.Length == 0, string.Join('\n', failed));
        output.WriteLine($"{listener.Compiled.Count} methods, {listener.Succeeded} inlines, none failed, after {patience.Elapsed.TotalSeconds:f1} s");
    }

    /// <summary>
    /// Methods of the kernel that stand on their own, by reflection so that a new stage is watched too. Derivative and Flow
    /// only call others, and the battery's rare bracketed search hardly ever runs, so the tiered compiler never comes to it.
    /// </summary>
    private static IEnumerable<string> Stages() =>
        new[] { typeof(Kernel<>), typeof(Surroundings<>) }
            .SelectMany(t => t.GetMethods(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly))
            .Where(method => (method.MethodImplementationFlags & MethodImplAttributes.NoInlining) != 0)
            .Select(method => method.Name)
            .Except(["Derivative", "Flow", "SettleVoltage"]);

    /// <summary>Lane types that this processor carries out in hardware; the others are never chosen for a flight.</summary>
    private static HashSet<string> LaneTypes()
    {
        HashSet<string> types = [nameof(Lane1)];
        if (Vector256.IsHardwareAccelerated) types.Add(nameof(Lane4));
        if (Vector512.IsHardwareAccelerated) types.UnionWith([nameof(Lane8), nameof(LaneF16)]);
        return types;
    }

    /// <summary>Stages and fallbacks that the source marks as not to be inlined; a lane operation must never be.</summary>
    private static HashSet<string> DeliberatelyApart() =>
        [.. new[] { typeof(Kernel<>), typeof(Surroundings<>), typeof(CellLookup) }
            .SelectMany(t => t.GetMethods(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly))
            .Where(m => (m.MethodImplementationFlags & MethodImplAttributes.NoInlining) != 0)
            .Select(m => m.Name)];

    /// <summary>Loads its own copy of one assembly; the default context would hand out the one in use.</summary>
    private sealed class SecondCopy(Assembly original) : AssemblyLoadContext
    {
        protected override Assembly? Load(AssemblyName assemblyName) =>
            assemblyName.Name == original.GetName().Name ? LoadFromAssemblyPath(original.Location) : null;
    }

    /// <summary>Collects inlining events (JitTracing keyword 0x1000, verbose) of methods of the kernel.</summary>
    private sealed class InlineListener(HashSet<string> lanes) : EventListener
    {
        private readonly HashSet<string> _compiled = [];
        private readonly HashSet<(string Into, string Inlinee, string Reason)> _failed = [];
        private readonly Lock _gate = new();
        private int _succeeded;

        public int Succeeded => Volatile.Read(ref _succeeded);

        public HashSet<string> Compiled
        {
            get
            {
                lock (_gate) return [.. _compiled];
            }
        }

        public string[] Failed(HashSet<string> apart)
        {
            lock (_gate)
                return [.. _failed.Where(f => !apart.Contains(f.Inlinee[(f.Inlinee.LastIndexOf('.') + 1)..])).Select(f => $"{f.Inlinee} into {f.Into}: {f.Reason}")];
        }

        protected override void OnEventSourceCreated(EventSource eventSource)
        {
            if (eventSource.Name == "Microsoft-Windows-DotNETRuntime")
                EnableEvents(eventSource, EventLevel.Verbose, (EventKeywords)0x1000);
        }

        protected override void OnEventWritten(EventWrittenEventArgs eventData)
        {
            bool failed = eventData.EventName!.StartsWith("MethodJitInliningFailed", StringComparison.Ordinal);
            if (!failed && !eventData.EventName.StartsWith("MethodJitInliningSucceeded", StringComparison.Ordinal)) return;
            string type = Text("MethodBeingCompiledNamespace"), method = Text("MethodBeingCompiledName");
            if (!type.StartsWith("Simfeel.Physics.Kernel.Kernel`1", StringComparison.Ordinal)
                && !type.StartsWith("Simfeel.Physics.Kernel.Surroundings`1", StringComparison.Ordinal)
                && !type.StartsWith("Simfeel.Physics.Lanes.", StringComparison.Ordinal)
                && !type.StartsWith("Simfeel.Physics.Motors.MotorLaws`1", StringComparison.Ordinal)) return;
            string lane = type[(type.LastIndexOf('.') + 1)..].TrimEnd(']');
            // a broken step is flown again through calls of another kind, once
            if (!lanes.Contains(lane) || method.EndsWith("Stepwise", StringComparison.Ordinal)) return;
            lock (_gate)
            {
                _compiled.Add($"{lane}.{method}");
                if (failed) _failed.Add(($"{lane}.{method}", $"{Text("InlineeNamespace")}.{Text("InlineeName")}", Text("FailReason")));
                else _succeeded++;
            }

            string Text(string field) => eventData.Payload![eventData.PayloadNames!.IndexOf(field)]?.ToString() ?? "";
        }
    }
}
