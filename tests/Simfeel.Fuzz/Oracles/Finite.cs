using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using Simfeel.Fuzz.Running;
using Simfeel.Physics;

namespace Simfeel.Fuzz.Oracles;

/// <summary>Whether every number in an object is finite, whatever it is made of.</summary>
internal static class Finite
{
    private static readonly ConcurrentDictionary<Type, FieldInfo[]> Fields = new();

    /// <summary>Walks through all fields.</summary>
    /// <param name="what">The object.</param>
    /// <param name="name">Its name, for the message.</param>
    /// <param name="depth">How deep to look.</param>
    public static void Check(object? what, string name, int depth = 7)
    {
        switch (what)
        {
            case null or string or Enum or bool: return;
            case double number:
                if (!double.IsFinite(number)) throw new UnexplainedException($"{name} is {number}");
                return;
            case double[] numbers:
                foreach (double number in numbers) Check(number, name, 1);
                return;
        }
        Type type = what.GetType();
        if (depth == 0 || type.IsPrimitive || type == typeof(PerRotor)) return;
        if (what is IEnumerable many)
        {
            foreach (object? one in many) Check(one, name + "[]", depth - 1);
            return;
        }
        if (type.Namespace?.StartsWith("Simfeel", StringComparison.Ordinal) != true && !type.IsGenericType) return;
        FieldInfo[] fields = Fields.GetOrAdd(type, static t => t.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic));
        foreach (FieldInfo field in fields)
        {
            if (typeof(Delegate).IsAssignableFrom(field.FieldType)) continue;
            Check(field.GetValue(what), $"{name}.{field.Name.Trim('<').Split('>')[0]}", depth - 1);
        }
    }

    /// <summary>Whether a flight's state is one that a craft can be in.</summary>
    public static void Check(in CraftState state, int rotors)
    {
        double sum = state.p_WB.Length + state.v_WB.Length + state.w_WB_B.Length + state.Charge + state.PairVoltage + state.q_WB.W;
        for (int k = 0; k < rotors; k++) sum += state.RotorSpeeds[k] + state.InducedVelocities[k];
        if (!double.IsFinite(sum)) throw new UnexplainedException($"the flight's state is not finite: {state.p_WB} {state.v_WB} {state.w_WB_B} {state.Charge}");
    }
}
