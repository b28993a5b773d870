using System.Xml.Linq;

namespace Simfeel.Tests.Documents;

/// <summary>The verbs, arguments and options of the program as it describes them itself.</summary>
internal sealed class CommandModel
{
    private readonly XElement _root;

    private CommandModel(XElement root) => _root = root;

    /// <summary>Of the program under test.</summary>
    public static CommandModel Own { get; } = new(XDocument.Parse(Cli.Run("cli", "xmldoc").Output).Root!);

    /// <summary>Names of all verbs, those of a branch as two words.</summary>
    public IReadOnlyList<string> Verbs =>
    [
        .. _root.Elements("Command").SelectMany(command => command.Elements("Command").Select(sub => $"{Name(command)} {Name(sub)}").Prepend(Name(command)))
            .Where(name => !name.Contains("__", StringComparison.Ordinal)),
    ];

    /// <summary>The examples of <c>--help</c> of every verb, as words.</summary>
    public IEnumerable<string[]> Examples(string verb)
    {
        string[] path = verb.Split(' ');
        XElement command = path.Aggregate(_root, (parent, name) => parent.Elements("Command").First(child => Name(child) == name));
        List<string> example = [];
        foreach (string word in command.Element("Examples")?.Elements("Example").Select(word => word.Attribute("commandLine")!.Value) ?? [])
        {
            // the description lists all words one after the other; an example begins with its verb
            if (word == path[0] && example.Count > 0)
            {
                yield return [.. example];
                example.Clear();
            }
            example.Add(word);
        }
        if (example.Count > 0) yield return [.. example];
    }

    /// <summary>Why the program would refuse these words as misuse; null if it would not. An ellipsis stands for arguments that are left out.</summary>
    public string? Fault(IReadOnlyList<string> words)
    {
        XElement parent = _root, command = Default(_root);
        int at = 0;
        while (at < words.Count && parent.Elements("Command").FirstOrDefault(child => Name(child) == words[at]) is { } verb)
        {
            parent = verb;
            command = verb.Attribute("IsBranch")!.Value == "true" ? Default(verb) : verb;
            at++;
        }
        XElement[] parameters = [.. command.Elements("Parameters").Elements()];
        int given = 0;
        bool leftOut = false;
        for (; at < words.Count; at++)
        {
            string word = words[at];
            if (word is "..." or "…")
            {
                leftOut = true;
            }
            else if (word.StartsWith("--", StringComparison.Ordinal))
            {
                if (word is "--help" or "--version") return null;
                XElement? option = parameters.FirstOrDefault(p => p.Name == "Option" && p.Attribute("Long")!.Value.Split(',').Contains(word[2..]));
                if (option is null) return $"there is no option {word} of {Name(command)}";
                if (option.Attribute("Kind")!.Value == "flag") continue;
                if (++at >= words.Count || words[at].StartsWith("--", StringComparison.Ordinal)) return $"{word} has no value";
            }
            else
            {
                given++;
            }
        }
        XElement[] arguments = [.. parameters.Where(p => p.Name == "Argument")];
        if (given > arguments.Length && arguments.All(p => p.Attribute("Kind")!.Value != "vector")) return $"{given} arguments are too many, or there is no such verb";
        bool alone = words.Any(word => word is "--propeller");
        if (!leftOut && !alone && given < arguments.Count(p => p.Attribute("Required")!.Value == "true")) return $"{given} arguments are too few";
        return null;
    }

    private static XElement Default(XElement parent) => parent.Elements("Command").First(child => Name(child).StartsWith("__", StringComparison.Ordinal));

    private static string Name(XElement command) => command.Attribute("Name")!.Value;
}
