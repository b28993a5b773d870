using System.Collections;
using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace Simfeel.Studies.Tests.Blind;

/// <summary>How far a walk through objects looks.</summary>
public enum Eyes
{
    /// <summary>Public properties and fields, and what objects print as.</summary>
    Public,

    /// <summary>All properties and fields but those hidden from debuggers.</summary>
    Debugger,

    /// <summary>Every field.</summary>
    Everything,
}

/// <summary>All that can be seen from an object on, as text: a walk by reflection.</summary>
internal sealed class VisibleState
{
    private const BindingFlags PublicMembers = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static;
    private const BindingFlags AllMembers = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance;

    private readonly StringBuilder _text = new();
    private readonly HashSet<object> _seen = new(ReferenceEqualityComparer.Instance);
    private readonly Eyes _eyes;

    private VisibleState(Eyes eyes) => _eyes = eyes;

    public static string Of(object? root, Eyes eyes)
    {
        VisibleState state = new(eyes);
        state.Walk("", root);
        return state._text.ToString();
    }

    private void Walk(string path, object? value)
    {
        _text.Append(path).Append(" = ").AppendLine(Convert.ToString(value, CultureInfo.InvariantCulture) ?? "null");
        if (value is null or string || value.GetType().IsPrimitive || value.GetType().IsEnum || !_seen.Add(value)) return;
        Type type = value.GetType();
        if (type.GetCustomAttribute<DebuggerDisplayAttribute>() is { } display) _text.AppendLine(display.Value);
        if (value is IEnumerable items)
        {
            int n = 0;
            foreach (object? item in items) Walk($"{path}[{n++}]", item);
            return;
        }
        BindingFlags members = _eyes == Eyes.Public ? PublicMembers : AllMembers;
        foreach (FieldInfo field in type.GetFields(members).Where(Seen)) Walk($"{path}.{field.Name}", field.GetValue(value));
        if (_eyes == Eyes.Everything) return;
        foreach (PropertyInfo property in type.GetProperties(members).Where(Seen).Where(property => property.GetIndexParameters().Length == 0))
            Walk($"{path}.{property.Name}", property.GetValue(value));
    }

    private bool Seen(MemberInfo member) =>
        _eyes != Eyes.Debugger || member.GetCustomAttribute<DebuggerBrowsableAttribute>() is not { State: DebuggerBrowsableState.Never };
}
