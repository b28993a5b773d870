using Simfeel.Flight.Fields;

namespace Simfeel.Flight.Tests.Fields;

/// <summary>The field that comes with the program, read once.</summary>
internal static class GullPoint
{
    public static string File { get; } = Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml");

    public static FieldResult Result { get; } = FieldReader.Read(File);

    public static FieldMap Map => Result.Map ?? throw new InvalidOperationException(string.Join('\n', Result.Diagnostics));
}
