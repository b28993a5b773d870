using System.Collections.Immutable;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;

namespace Simfeel.Mutation;

/// <summary>A project's sources and how to compile them, one file with all its mutants in it, each behind a switch.</summary>
internal sealed class MutatedProject
{
    private const string Switch = "global::SimfeelMutation.Switch.Active";
    private const string SwitchSource =
        "namespace SimfeelMutation { internal static class Switch { public static int Active; } "
        + "internal static class Seen { public static readonly bool[] Members = new bool[100000]; } }";

    private static readonly CSharpParseOptions Parse =
        new(LanguageVersion.Latest, DocumentationMode.None, preprocessorSymbols: ["NET", "NET10_0", "NET10_0_OR_GREATER"]);

    private readonly CSharpCompilation plain;
    private readonly Dictionary<string, SyntaxTree> trees = [];

    /// <summary>Reads a project that has been built, and its references from the folder its tests were built into.</summary>
    public MutatedProject(string root, string name, string testFolder)
    {
        string folder = Path.Combine(root, "src", name);
        List<SyntaxTree> all = [CSharpSyntaxTree.ParseText(SwitchSource, Parse)];
        foreach (string path in Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string file = Path.GetRelativePath(folder, path).Replace('\\', '/');
            if (file.StartsWith("bin/", StringComparison.Ordinal)) continue;
            if (file.StartsWith("obj/", StringComparison.Ordinal) && !file.StartsWith("obj/Release/net10.0/", StringComparison.Ordinal)) continue;
            SyntaxTree tree = CSharpSyntaxTree.ParseText(File.ReadAllText(path), Parse, file, Encoding.UTF8);
            all.Add(tree);
            if (!file.StartsWith("obj/", StringComparison.Ordinal)) trees[file] = tree;
        }
        string framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        IEnumerable<MetadataReference> references = Directory.EnumerateFiles(framework, "*.dll")
            .Concat(Directory.EnumerateFiles(testFolder, "*.dll"))
            .Where(p => Path.GetFileNameWithoutExtension(p) is string n && n != name && n != "Simfeel.Mutation" && IsManaged(p))
            .DistinctBy(Path.GetFileName).Select(p => MetadataReference.CreateFromFile(p));
        CSharpCompilationOptions options = new(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true,
            optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable, deterministic: true);
        CSharpCompilation bare = CSharpCompilation.Create(name, all, references, options);
        CSharpGeneratorDriver.Create(Generators(), parseOptions: Parse).RunGeneratorsAndUpdateCompilation(bare, out Compilation whole, out _);
        plain = (CSharpCompilation)whole;
    }

    /// <summary>Changes with any character of the sources.</summary>
    public string Hash => Convert.ToHexString(SHA256.HashData(
        Encoding.UTF8.GetBytes(string.Concat(trees.OrderBy(t => t.Key, StringComparer.Ordinal).Select(t => t.Value.ToString())))));

    /// <summary>The files that can be mutated, relative to the project.</summary>
    public IReadOnlyCollection<string> Files => trees.Keys;

    /// <summary>Finds a file's mutants and leaves out those that do not compile.</summary>
    /// <returns>The mutants; number n stands behind switch n + 1 in the assembly that is written.</returns>
    public List<Mutant> Compile(string file, string assembly)
    {
        SyntaxTree original = trees[file];
        List<Mutant> mutants = MutantFinder.Find(file, original);
        while (true)
        {
            SyntaxTree mutated = CSharpSyntaxTree.ParseText(Render(original.ToString(), mutants), Parse, file, Encoding.UTF8);
            CSharpCompilation compilation = plain.ReplaceSyntaxTree(original, mutated);
            HashSet<int> wrong = [];
            foreach (Diagnostic error in compilation.GetSemanticModel(mutated).GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error))
            {
                wrong.UnionWith(Culprits(mutated, error, mutants));
            }
            if (wrong.Count == 0)
            {
                Emit(compilation, assembly);
                return mutants;
            }
            mutants = [.. mutants.Where((_, i) => !wrong.Contains(i + 1))];
        }
    }

    /// <summary>Numbers the members and writes an assembly that notes each one that runs, if a name for it is given.</summary>
    /// <returns>File, first and last line of each member, by number.</returns>
    public List<(string File, int First, int Last)> CompileWithNotes(string? assembly)
    {
        List<(string, int, int)> members = [];
        CSharpCompilation compilation = plain;
        foreach ((string file, SyntaxTree tree) in trees)
        {
            // Lane operations run billions of times: their tests are taken from their folder instead.
            if (file.StartsWith("Lanes/", StringComparison.Ordinal)) continue;
            SyntaxNode root = new MemberNotes(file, members).Visit(tree.GetRoot());
            compilation = compilation.ReplaceSyntaxTree(tree, CSharpSyntaxTree.ParseText(root.ToFullString(), Parse, file, Encoding.UTF8));
        }
        if (assembly is not null) Emit(compilation, assembly);
        return members;
    }

    private static void Emit(CSharpCompilation compilation, string assembly)
    {
        using FileStream stream = File.Create(assembly);
        Microsoft.CodeAnalysis.Emit.EmitResult result = compilation.Emit(stream);
        if (!result.Success)
        {
            throw new InvalidOperationException(string.Join('\n', result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error).Take(10)));
        }
    }

    private static string Render(string text, List<Mutant> mutants)
    {
        // Outer spans open first and close last; of two mutants of one span, the first is the outer one.
        List<(int At, int Order, string Text)> opens = [], closes = [];
        for (int i = 0; i < mutants.Count; i++)
        {
            Mutant m = mutants[i];
            int length = (m.End - m.Start) * 8;
            int rank = i < mutants.Count - 1 && mutants[i + 1].Start == m.Start && mutants[i + 1].End == m.End ? 1 : 0;
            opens.Add((m.Start, -length - rank, m.IsStatement ? $"if({Switch}=={i + 1}){{{m.Replacement}}}else " : $"({Switch}=={i + 1}?({m.Replacement}):("));
            if (!m.IsStatement) closes.Add((m.End, length + rank, "))"));
        }
        StringBuilder result = new();
        int done = 0;
        foreach ((int at, _, string insert) in closes.Select(c => (c.At, (long)c.Order - int.MaxValue, c.Text))
            .Concat(opens.Select(o => (o.At, (long)o.Order + int.MaxValue, o.Text))).OrderBy(x => x.At).ThenBy(x => x.Item2))
        {
            result.Append(text, done, at - done).Append(insert);
            done = at;
        }
        return result.Append(text, done, text.Length - done).ToString();
    }

    private static List<int> Culprits(SyntaxTree tree, Diagnostic error, List<Mutant> mutants)
    {
        SyntaxNode at = tree.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
        foreach (SyntaxNode node in at.AncestorsAndSelf())
        {
            string? condition = node switch
            {
                ConditionalExpressionSyntax c => c.Condition.ToString(),
                IfStatementSyntax s => s.Condition.ToString(),
                _ => null,
            };
            if (condition?.StartsWith(Switch, StringComparison.Ordinal) == true) return [int.Parse(condition[(Switch.Length + 2)..])];
        }
        // A variable that a statement left out would have set: the error stands where it is used.
        SyntaxNode member = at.AncestorsAndSelf().First(n => n is MemberDeclarationSyntax);
        List<int> within = [.. Enumerable.Range(1, mutants.Count).Where(i => member.ToString().Contains($"{Switch}=={i})", StringComparison.Ordinal)
            || member.ToString().Contains($"{Switch}=={i}?", StringComparison.Ordinal))];
        string word = tree.GetText().ToString(error.Location.SourceSpan);
        List<int> named = [.. within.Where(i => mutants[i - 1].IsStatement && mutants[i - 1].Change.Contains(word, StringComparison.Ordinal))];
        if (named.Count > 0) return named;
        return within.Count > 0 ? within : throw new InvalidOperationException(error.ToString());
    }

    private static bool IsManaged(string path)
    {
        try
        {
            AssemblyName.GetAssemblyName(path);
            return true;
        }
        catch (BadImageFormatException)
        {
            return false;
        }
    }

    private static ImmutableArray<ISourceGenerator> Generators()
    {
        string packs = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(typeof(object).Assembly.Location)!, "../../../packs/Microsoft.NETCore.App.Ref"));
        string? generator = Directory.EnumerateFiles(packs, "System.Text.RegularExpressions.Generator.dll", SearchOption.AllDirectories).FirstOrDefault();
        if (generator is null) return [];
        return new AnalyzerFileReference(generator, new Loader()).GetGenerators(LanguageNames.CSharp);
    }

    private sealed class Loader : IAnalyzerAssemblyLoader
    {
        public void AddDependencyLocation(string fullPath)
        {
        }

        public Assembly LoadFromPath(string fullPath) => Assembly.LoadFrom(fullPath);
    }
}
