using System.Reflection;
using System.Text.RegularExpressions;

namespace Simfeel.Tests.Documents;

/// <summary>Types and members that a document names exist in the assemblies of the program.</summary>
internal static partial class CodeNames
{
    private static readonly Lazy<ILookup<string, Type>> Types = new(() => ReferenceGraphTests.Chain
        .SelectMany(project => ReferenceGraphTests.Load(project).GetTypes())
        .ToLookup(type => type.Name.Split('`')[0]));

    public static void Check(MarkdownBlock block)
    {
        Assert.NotEmpty(block.Lines.SelectMany(line => Call().Matches(line)));
        foreach (string line in block.Lines)
        {
            // what stands behind the wide gap is prose
            string code = line.Split("  ")[0];
            foreach (Match call in Call().Matches(code))
            {
                string name = call.Groups[1].Value, member = call.Groups[2].Value;
                Assert.True(Types.Value[name].Any(type => type.GetMember(member, BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance).Length > 0), $"{block}: there is no {name}.{member}.");
            }
            foreach (Match result in Result().Matches(code))
                Assert.True(Types.Value[result.Groups[1].Value].Any(), $"{block}: there is no type {result.Groups[1].Value}.");
        }
    }

    [GeneratedRegex(@"\b([A-Z]\w+)\.([A-Z]\w+)\(")]
    private static partial Regex Call();

    [GeneratedRegex(@"-> ([A-Z]\w+)")]
    private static partial Regex Result();
}
