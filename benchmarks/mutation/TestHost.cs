using System.Reflection;
using System.Runtime.Loader;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace Simfeel.Mutation;

/// <summary>Test methods of one assembly, loaded once more with everything of ours that it stands on, and run in this process.</summary>
internal sealed class TestHost
{
    private readonly Assembly assembly;
    private readonly Dictionary<string, List<IXunitTestCase>> methods = [];
    private readonly FieldInfo active;

    /// <summary>Loads the assemblies and finds the tests of some classes.</summary>
    /// <param name="folder">Folder with the tests and the changed project.</param>
    /// <param name="project">Name of the changed project.</param>
    /// <param name="mutant">The switch that is on from the beginning; 0 for none.</param>
    /// <param name="classes">Full names of test classes; null for all.</param>
    public TestHost(string folder, string project, int mutant, IReadOnlyCollection<string>? classes)
    {
        Context context = new(folder);
        Project = context.LoadFromAssemblyPath(Path.Combine(folder, project + ".dll"));
        active = Project.GetType("SimfeelMutation.Switch", true)!.GetField("Active")!;
        Active = mutant;
        assembly = context.LoadFromAssemblyPath(Path.Combine(folder, project + ".Tests.dll"));
        IReflectionAssemblyInfo info = Reflector.Wrap(assembly);
        using XunitTestFrameworkDiscoverer discoverer = new(info, new NoSource(), new Silence());
        foreach (string name in classes ?? [.. assembly.GetTypes().Where(t => t is { IsAbstract: false, IsClass: true }).Select(t => t.FullName!)])
        {
            Found found = new();
            discoverer.Find(name, false, found, new Options());
            found.Done.Wait();
            foreach (IXunitTestCase test in found.Cases)
            {
                string method = $"{test.TestMethod.TestClass.Class.Name}.{test.TestMethod.Method.Name}";
                if (!methods.TryGetValue(method, out List<IXunitTestCase>? cases)) methods[method] = cases = [];
                cases.Add(test);
            }
        }
    }

    /// <summary>The changed project.</summary>
    public Assembly Project { get; }

    /// <summary>Names of the test methods that were found.</summary>
    public IReadOnlyCollection<string> Methods => methods.Keys;

    /// <summary>Number of the mutant that is switched on; 0 for none.</summary>
    public int Active
    {
        get => (int)active.GetValue(null)!;
        set => active.SetValue(null, value);
    }

    /// <summary>Runs all cases of a test method, until one fails.</summary>
    /// <returns>True where all passed.</returns>
    public bool Passes(string method)
    {
        List<IXunitTestCase> cases = methods[method];
        TestAssembly tests = new(Reflector.Wrap(assembly));
        Verdict verdict = new();
        using XunitTestAssemblyRunner runner = new(tests, cases, new Silence(), verdict, new Options());
        runner.RunAsync().GetAwaiter().GetResult();
        return !verdict.Failed;
    }

    private sealed class Context(string folder) : AssemblyLoadContext("mutated")
    {
        // Everything of ours is loaded anew, with static fields of its own; packages and framework are shared.
        protected override Assembly? Load(AssemblyName name)
        {
            string path = Path.Combine(folder, name.Name + ".dll");
            bool ours = name.Name!.StartsWith("Simfeel.", StringComparison.Ordinal) && name.Name != "Simfeel.Mutation";
            return ours && File.Exists(path) ? LoadFromAssemblyPath(path) : null;
        }
    }

    private sealed class Found : IMessageSink
    {
        public List<IXunitTestCase> Cases { get; } = [];

        public ManualResetEventSlim Done { get; } = new();

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestCaseDiscoveryMessage { TestCase: IXunitTestCase test }) Cases.Add(test);
            if (message is IDiscoveryCompleteMessage) Done.Set();
            return true;
        }
    }

    private sealed class Verdict : IMessageSink
    {
        public bool Failed { get; private set; }

        public bool OnMessage(IMessageSinkMessage message)
        {
            Failed |= message is ITestFailed or IErrorMessage or ITestAssemblyCleanupFailure or ITestCollectionCleanupFailure
                or ITestClassCleanupFailure or ITestMethodCleanupFailure or ITestCaseCleanupFailure or ITestCleanupFailure;
            return !Failed;
        }
    }

    private sealed class Silence : IMessageSink
    {
        public bool OnMessage(IMessageSinkMessage message) => true;
    }

    private sealed class NoSource : ISourceInformationProvider
    {
        public ISourceInformation? GetSourceInformation(ITestCase testCase) => null;

        public void Dispose()
        {
        }
    }

    private sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        private readonly Dictionary<string, object?> values = new() { ["xunit.execution.DisableParallelization"] = (bool?)true };

        public TValue? GetValue<TValue>(string name) => values.TryGetValue(name, out object? value) ? (TValue?)value : default;

        public void SetValue<TValue>(string name, TValue value) => values[name] = value;
    }
}
