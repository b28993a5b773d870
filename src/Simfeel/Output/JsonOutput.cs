using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Simfeel.Physics.Maths;

namespace Simfeel.CommandLine.Output;

/// <summary>JSON for machines: SI units named in the keys; a number that does not exist is null.</summary>
internal static class JsonOutput
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new FiniteNumber() },
    };

    /// <summary>Prints an object.</summary>
    public static void Print(Dictionary<string, object?> value) => Console.Out.WriteLine(Text(value));

    /// <summary>An object as text.</summary>
    public static string Text(Dictionary<string, object?> value) => JsonSerializer.Serialize(value, Options);

    /// <summary>A vector as three numbers.</summary>
    public static double[] Of(Vec3 v) => [v.X, v.Y, v.Z];

    /// <summary>A matrix as three rows.</summary>
    public static double[][] Of(Mat3 m) => [[m.M00, m.M01, m.M02], [m.M10, m.M11, m.M12], [m.M20, m.M21, m.M22]];

    /// <summary>JSON knows no NaN and no infinity: null stands for both.</summary>
    private sealed class FiniteNumber : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value)) writer.WriteNumberValue(value);
            else writer.WriteNullValue();
        }
    }
}
