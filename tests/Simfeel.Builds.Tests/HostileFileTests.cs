using System.Text;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds.Tests;

/// <summary>Files that are no build files at all give one clear diagnostic and no exception.</summary>
public sealed class HostileFileTests : IDisposable
{
    private readonly TempFolder _directory = new();

    public void Dispose() => _directory.Dispose();

    [Fact]
    public void MissingFile() => One(_directory.File("none.toml"), "no such file");

    [Fact]
    public void MissingDirectory() => One(Path.Combine(_directory.Path, "no", "none.toml"), "no such file");

    [Fact]
    public void DirectoryInsteadOfFile() => One(_directory.Path, "is a folder");

    [Fact]
    public void EmptyPath() => One("", "cannot be opened");

    [Fact]
    public void PathWithNul() => One("a\0b", "cannot be opened");

    [Theory]
    [InlineData("")]
    [InlineData("  \n\t\n")]
    [InlineData("\uFEFF")]
    public void EmptyFile(string text) => One(Written(Encoding.UTF8.GetBytes(text)), "empty");

    [Fact]
    public void BinaryFile()
    {
        byte[] bytes = new byte[5000];
        new Random(1).NextBytes(bytes);
        bytes[100] = 0;
        bytes[0] = (byte)'a';
        One(Written(bytes), "binary file");
    }

    [Fact]
    public void Utf16File() => One(Written([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(BuildText.Minimal)]), "UTF-16");

    [Fact]
    public void InvalidUtf8NamesTheLine()
    {
        byte[] bytes = Encoding.Latin1.GetBytes(BuildText.Minimal.Replace("\"Test\"", "\"M\u00F6we\"", StringComparison.Ordinal));
        Diagnostic error = One(Written(bytes), "no UTF-8 text");
        Assert.Equal(2, error.Line);
    }

    [Fact]
    public void TenMegabytes()
    {
        byte[] bytes = new byte[10 * 1024 * 1024];
        Array.Fill(bytes, (byte)'#');
        Diagnostic error = One(Written(bytes), "at most 1 MiB");
        Assert.Contains("10.0 MiB", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TenMegabytesOfText() => OneOfText(new string('#', 10 * 1024 * 1024), "at most 1 MiB");

    [Theory]
    [InlineData("[", "]")]
    [InlineData("{a = ", "}")]
    public void DeepNesting(string open, string close)
    {
        string text = BuildText.Plus("x = " + string.Concat(Enumerable.Repeat(open, 40000)) + "1" + string.Concat(Enumerable.Repeat(close, 40000)) + "\n");
        OneOfText(text, "nested more than 16 deep");
    }

    [Fact]
    public void LongDottedKeyIsOneUnknownKey()
    {
        string text = BuildText.Plus("[gyro]\nx" + string.Concat(Enumerable.Repeat(".a", 50000)) + " = 1\n");
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.NotNull(result.Build);
        Assert.Equal(Severity.Warning, Assert.Single(result.Diagnostics).Severity);
    }

    [Theory]
    [InlineData("mass_g = 33\nmass_g = 34", "motor.mass_g", "given twice", "keep one")]
    [InlineData("mass_g = 3 3", "mass_g", "not valid TOML", "")]
    [InlineData("mass_g = 33 g", "mass_g", "not valid TOML", "its unit is in the key")]
    [InlineData("mass_g = .5", "mass_g", "not valid TOML", "before and after the decimal point")]
    [InlineData("mass_g = 05", "mass_g", "not valid TOML", "leading zero")]
    [InlineData("mass_g =", "mass_g", "not valid TOML", "key = value")]
    [InlineData("mass_g = True", "mass_g", "not valid TOML", "true or false in small letters")]
    [InlineData("mass_g = heavy", "mass_g", "not valid TOML", "double quotes")]
    [InlineData("mass_g = \"33", "mass_g", "not valid TOML", "double quote")]
    [InlineData("mass_g = 99999999999999999999999", "mass_g", "not valid TOML", "")]
    [InlineData("[[[", "", "not valid TOML", "")]
    [InlineData("mass_g = \"\u0001\"", "mass_g", "not valid TOML", "")]
    public void TextThatIsNoToml(string line, string key, string message, string hint)
    {
        string text = BuildText.With("motor", line);
        Diagnostic error = OneOfText(text, message);
        Assert.Equal(key, error.Key);
        Assert.InRange(error.Line!.Value, BuildText.LineOf(text, line), BuildText.LineOf(text, line) + 1);
        Assert.Contains(hint, error.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void TableGivenTwice()
    {
        Diagnostic error = OneOfText(BuildText.Plus("[motor]\nmass_g = 33\n"), "given twice; the first time in line 7");
        Assert.Equal("motor", error.Key);
        Assert.Equal(BuildText.Minimal.Count(c => c == '\n') + 1, error.Line);
    }

    [Fact]
    public void TooManyExtras()
    {
        string text = BuildText.Plus(string.Concat(Enumerable.Repeat("[[extra]]\nmass_g = 0.1\n", 100)));
        Diagnostic error = OneOfText(text, "allowed are 0 to 64");
        Assert.Equal("extra", error.Key);
    }

    /// <summary>Random damage to a good file: always a result, never an exception, and no build without a reason.</summary>
    [Fact]
    public void DamagedFilesNeverThrow()
    {
        Random random = new(20261125);
        byte[] good = File.ReadAllBytes(Path.Combine(BuildText.StarterDirectory(), "wagtail.toml"));
        int refused = 0;
        for (int n = 0; n < 400; n++)
        {
            byte[] bytes = (byte[])good.Clone();
            int changes = 1 + random.Next(4);
            for (int i = 0; i < changes; i++) bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            if (random.Next(4) == 0) bytes = bytes[..random.Next(bytes.Length)];
            DiagnosticBag bag = new("damaged");
            string? text = SourceText.Decode(bytes, bag);
            if (text is null)
            {
                Assert.Single(bag.InOrder());
                refused++;
                continue;
            }
            BuildResult result = BuildReader.Parse(text, "damaged");
            Assert.Equal(result.Build is null, result.Diagnostics.Any(d => d.Severity == Severity.Error));
            if (result.Build is null) refused++;
        }
        Assert.InRange(refused, 50, 399);
    }

    private string Written(byte[] bytes)
    {
        string path = _directory.File("build.toml");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static Diagnostic One(string path, string message) => Only(BuildReader.Read(path), path, message);

    private static Diagnostic OneOfText(string text, string message) => Only(BuildReader.Parse(text, "test.toml"), "test.toml", message);

    private static Diagnostic Only(BuildResult result, string file, string message)
    {
        Assert.Null(result.Build);
        Diagnostic error = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Error, file), (error.Severity, error.File));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        return error;
    }
}
