using System.Runtime.CompilerServices;

namespace Simfeel.Physics;

/// <summary>One number for each rotor, room for <see cref="Craft.MaxRotors"/>; index it like an array.</summary>
[InlineArray(Craft.MaxRotors)]
public struct PerRotor
{
    private double _first;

    /// <summary>The same number for every rotor.</summary>
    public static PerRotor All(double value)
    {
        PerRotor result = default;
        for (int k = 0; k < Craft.MaxRotors; k++) result[k] = value;
        return result;
    }
}
