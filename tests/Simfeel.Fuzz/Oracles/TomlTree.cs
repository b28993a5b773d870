namespace Simfeel.Fuzz.Oracles;

/// <summary>Tables and values of a TOML text while it is read; knows what may not be given twice.</summary>
internal sealed class TomlTree
{
    private readonly Node _root = new();
    private Node _open;

    public TomlTree() => _open = _root;

    /// <summary>Sets a value in the open table; false where the key is taken.</summary>
    public bool Set(List<string> key, object value)
    {
        Node node = _open;
        for (int n = 0; n < key.Count - 1; n++)
        {
            if (!node.Children.TryGetValue(key[n], out Node? next)) node.Children[key[n]] = next = new() { ByDots = true };
            // what has a heading, a value or a list of tables cannot be added to by dots
            if (next.Value is not null || next.Items is not null || next.Headed || !next.ByDots) return false;
            node = next;
        }
        return node.Children.TryAdd(key[^1], new() { Value = value });
    }

    /// <summary>Opens a table or the next one of a list; false where that name is taken.</summary>
    public bool Open(List<string> key, bool list)
    {
        Node node = _root;
        for (int n = 0; n < key.Count; n++)
        {
            bool last = n == key.Count - 1;
            if (!node.Children.TryGetValue(key[n], out Node? next))
            {
                node.Children[key[n]] = next = new();
                if (last && list) next.Items = [];
            }
            else if (last && list && next.Items is null)
            {
                return false;
            }
            if (next.Value is not null || (last && !list && (next.Headed || next.Items is not null))) return false;
            if (last && !list && next.ByDots) return false;
            if (next.Items is List<Node> items)
            {
                if (last) items.Add(new());
                next = items[^1];
            }
            node = next;
        }
        node.Headed = true;
        _open = node;
        return true;
    }

    /// <summary>All values.</summary>
    public TomlReading Reading()
    {
        List<KeyValuePair<string, object>> values = [];
        List<string> tables = [];
        Walk(_root, "", values, tables);
        return new(values, tables);
    }

    /// <summary>A key in one word.</summary>
    public static string Joined(IEnumerable<string> key) => string.Join('.', key.Select(Part));

    private static string Part(string part) =>
        part.Length > 0 && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-') ? part : $"\"{part}\"";

    private static void Walk(Node node, string path, List<KeyValuePair<string, object>> values, List<string> tables)
    {
        if (node.Value is not null) values.Add(new(path, node.Value));
        if (node.Headed) tables.Add(path);
        for (int n = 0; n < (node.Items?.Count ?? 0); n++) Walk(node.Items![n], $"{path}[{n + 1}]", values, tables);
        foreach ((string name, Node child) in node.Children) Walk(child, path.Length > 0 ? $"{path}.{Part(name)}" : Part(name), values, tables);
    }

    private sealed class Node
    {
        public Dictionary<string, Node> Children { get; } = new(StringComparer.Ordinal);

        public object? Value { get; set; }

        public List<Node>? Items { get; set; }

        public bool Headed { get; set; }

        public bool ByDots { get; set; }
    }
}
