using Apache.Arrow;
using Apache.Arrow.Types;

namespace Simfeel.Flight.Traces;

/// <summary>The columns of a trace.</summary>
internal static class TraceSchema
{
    /// <summary>Letters of the two craft.</summary>
    public static readonly string[] Prefixes = ["a_", "b_"];

    /// <summary>Columns before those of the craft.</summary>
    public const int Shared = 11;

    /// <summary>The schema of a trace with a header.</summary>
    public static Schema Of(TraceHeader header)
    {
        int readings = header.ReadingsPerRow;
        Schema.Builder schema = new();
        schema.Field(new Field("time_s", DoubleType.Default, false));
        schema.Field(new Field("since_restart_s", DoubleType.Default, false));
        schema.Field(new Field("reading", Int64Type.Default, false));
        schema.Field(new Field("count", UInt16Type.Default, false));
        schema.Field(new Field("flown", UInt8Type.Default, false));
        schema.Field(new Field("hash", UInt64Type.Default, false));
        foreach (string stick in new[] { "stick_roll", "stick_pitch", "stick_yaw" })
            schema.Field(new Field(stick, List(Int16Type.Default, readings), false));
        schema.Field(new Field("stick_throttle", List(UInt16Type.Default, readings), false));
        schema.Field(new Field("switches", List(UInt16Type.Default, readings), false));
        foreach ((string prefix, TraceBuild build) in new[] { (Prefixes[0], header.A), (Prefixes[1], header.B) })
        {
            foreach (string name in CraftColumns.Names(build.Rotors))
                schema.Field(new Field(prefix + name, FloatType.Default, true));
            schema.Field(new Field(prefix + "crashed", BooleanType.Default, true));
            schema.Field(new Field(prefix + "struck_rotors", UInt8Type.Default, true));
        }
        foreach ((string key, string value) in header.ToMetadata()) schema.Metadata(key, value);
        return schema.Build();
    }

    private static FixedSizeListType List(IArrowType item, int size) => new(new Field("item", item, false), size);
}
