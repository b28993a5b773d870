using System.Buffers;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using System.Security.Cryptography;
using System.Text;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Assembly;

/// <summary>
/// A fingerprint of all that the bits of a rotor table depend on: propeller, section, air, the table's grid, the very
/// code that computes it, and the machine's mathematics library. Whatever changes, another fingerprint results, so a stored
/// table is either the one that would be computed or is not found.
/// </summary>
internal static class RotorTableKey
{
    /// <summary>Bytes of a fingerprint (SHA-256).</summary>
    public const int Length = SHA256.HashSizeInBytes;

    /// <summary>The fingerprint, or null for a section that cannot be told from another by its numbers.</summary>
    public static byte[]? Of(RotorGeometry geometry, AirState air)
    {
        ArrayBufferWriter<byte> all = new();
        Machine(all);
        Grid(all);
        Numbers(all, air.Temperature, air.Pressure, air.Density, air.SoundSpeed, air.Viscosity);
        Numbers(all, geometry.Diameter, geometry.Blades, geometry.RootCutOut, geometry.Stations.Length);
        foreach (BladeStation station in geometry.Stations) Numbers(all, station.Radius, station.Chord, station.Twist);
        switch (geometry.Polar)
        {
            case LowReynoldsPolar:
                Text(all, nameof(LowReynoldsPolar));
                break;
            case TabulatedPolar table:
                Text(all, nameof(TabulatedPolar));
                Numbers(all, table.Angles.Count, table.Reynolds.Count);
                Numbers(all, [.. table.Angles, .. table.Reynolds]);
                for (int row = 0; row < table.Reynolds.Count; row++)
                    for (int angle = 0; angle < table.Angles.Count; angle++)
                        Numbers(all, table.Node(row, angle).Lift, table.Node(row, angle).Drag);
                break;
            default:
                return null;
        }
        return SHA256.HashData(all.WrittenSpan);
    }

    /// <summary>Builds are deterministic, so the version id of the module changes with every change of its code.</summary>
    private static void Machine(ArrayBufferWriter<byte> all)
    {
        Text(all, typeof(RotorTable).Module.ModuleVersionId.ToString());
        Text(all, $"{Environment.Version} {RuntimeInformation.RuntimeIdentifier} {RuntimeInformation.OSDescription} {RuntimeInformation.ProcessArchitecture}");
        // The system's mathematics library picks its code by what the processor has; a home may be shared by several machines.
        Text(all, $"{Avx.IsSupported} {Avx2.IsSupported} {Fma.IsSupported} {Vector512.IsHardwareAccelerated}");
    }

    private static void Grid(ArrayBufferWriter<byte> all)
    {
        Numbers(all, RotorTableGrid.AngleCells, RotorTableGrid.InPlaneCells, RotorTableGrid.SpeedCells, RotorTable.CoefficientCount);
        Numbers(all, RotorTableGrid.InPlaneWeight, RotorTableGrid.SpeedScale, RotorTableGrid.FirstSpeed, RotorTableGrid.LastSpeed);
        for (int i = 0; i <= RotorTableGrid.AngleCells; i++) Numbers(all, RotorTableGrid.AngleAt(i));
        for (int j = 0; j <= RotorTableGrid.InPlaneCells; j++) Numbers(all, RotorTableGrid.InPlaneAt(j));
        for (int k = 0; k <= RotorTableGrid.SpeedCells; k++) Numbers(all, RotorTableGrid.SpeedAt(k));
    }

    private static void Numbers(ArrayBufferWriter<byte> all, params ReadOnlySpan<double> numbers) => all.Write(MemoryMarshal.AsBytes(numbers));

    /// <summary>A text with its length, so that two texts in a row cannot pass for two others.</summary>
    private static void Text(ArrayBufferWriter<byte> all, string text)
    {
        Numbers(all, text.Length);
        all.Write(Encoding.UTF8.GetBytes(text));
    }
}
