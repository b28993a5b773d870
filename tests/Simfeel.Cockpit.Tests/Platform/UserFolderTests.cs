using Simfeel.Cockpit.Platform;
using Systems = Simfeel.Cockpit.Platform.UserFolder.Systems;

namespace Simfeel.Cockpit.Tests.Platform;

public class UserFolderTests
{
    [Fact]
    public void What_is_stored_is_read_again_and_nothing_lies_beside_it()
    {
        using TempFolder temp = new();
        UserFolder folder = new(Path.Combine(temp.Path, "new", "simfeel"));
        Assert.False(folder.TryRead("sticks/a.toml", out string text, out string problem));
        Assert.Equal(("", ""), (text, problem));
        Assert.True(folder.TryWrite("sticks/a.toml", "one", out problem), problem);
        Assert.True(folder.TryWrite("sticks/a.toml", "two", out problem), problem);
        Assert.True(folder.TryRead("sticks/a.toml", out text, out problem), problem);
        Assert.Equal("two", text);
        Assert.Single(Directory.GetFiles(Path.Combine(folder.Path, "sticks")));
    }

    [Fact]
    public void A_file_where_the_folder_should_be_is_one_sentence()
    {
        using TempFolder temp = new();
        string file = Path.Combine(temp.Path, "simfeel");
        File.WriteAllText(file, "in the way");
        UserFolder folder = new(file);
        Assert.False(folder.TryWrite("settings.toml", "x", out string problem));
        AssertSentence(problem, "settings.toml cannot be stored: ");
        Assert.False(folder.TryRead("settings.toml", out _, out problem));
        Assert.Equal("in the way", File.ReadAllText(file));
        Assert.False(UserFolder.TryNewFile(file, "picture", ".png", default, out _, out problem));
        AssertSentence(problem, "Nothing can be stored in ");
    }

    [Fact]
    public void A_linked_file_stays_a_link()
    {
        using TempFolder temp = new();
        string kept = Path.Combine(temp.Path, "kept.toml");
        File.WriteAllText(kept, "old");
        UserFolder folder = new(Path.Combine(temp.Path, "config"));
        Directory.CreateDirectory(folder.Path);
        File.CreateSymbolicLink(Path.Combine(folder.Path, "settings.toml"), kept);
        Assert.True(folder.TryWrite("settings.toml", "new", out string problem), problem);
        Assert.Equal("new", File.ReadAllText(kept));
        Assert.NotNull(new FileInfo(Path.Combine(folder.Path, "settings.toml")).LinkTarget);
    }

    [Fact]
    public void What_is_no_text_of_ours_is_one_sentence()
    {
        using TempFolder temp = new();
        UserFolder folder = new(temp.Path);
        Directory.CreateDirectory(Path.Combine(temp.Path, "settings.toml"));
        Assert.False(folder.TryRead("settings.toml", out _, out string problem));
        AssertSentence(problem, "settings.toml cannot be read: ");
        File.WriteAllBytes(Path.Combine(temp.Path, "big.toml"), new byte[2_000_000]);
        Assert.False(folder.TryRead("big.toml", out _, out problem));
        AssertSentence(problem, "big.toml is longer than 1 MiB");
    }

    [Fact]
    public void Names_of_new_files_are_free()
    {
        using TempFolder temp = new();
        string into = Path.Combine(temp.Path, "pictures");
        DateTime time = new(2026, 11, 25, 13, 15, 2);
        Assert.True(UserFolder.TryNewFile(into, "picture", ".png", time, out string first, out string problem), problem);
        Assert.Equal("picture-20261125-131502.png", Path.GetFileName(first));
        File.WriteAllText(first, "");
        Assert.True(UserFolder.TryNewFile(into, "picture", ".png", time, out string second, out problem), problem);
        Assert.Equal("picture-20261125-131502-2.png", Path.GetFileName(second));
    }

    [Fact]
    public void Every_system_has_its_place()
    {
        Assert.Equal("/x/simfeel", Of(Systems.Linux, ("XDG_CONFIG_HOME", "/x"), ("HOME", "/h")));
        Assert.Equal("/h/.config/simfeel", Of(Systems.Linux, ("XDG_CONFIG_HOME", "relative"), ("HOME", "/h")));
        Assert.Equal("/h/Library/Application Support/simfeel", Of(Systems.Mac, ("HOME", "/h"), ("XDG_CONFIG_HOME", "/x")));
        Assert.Equal("/data/simfeel", Of(Systems.Windows, ("APPDATA", "/data")));
        Assert.Equal("/asked", Of(Systems.Linux, ("SIMFEEL_CONFIG", "/asked"), ("HOME", "/h")));
        Assert.Equal("/h/simfeel", UserFolder.OutputPath(Lookup(("HOME", "/h")), Systems.Linux));
        Assert.Equal("/out", UserFolder.OutputPath(Lookup(("SIMFEEL_OUTPUT", "/out"), ("HOME", "/h")), Systems.Linux));
        Assert.Equal(Environment.CurrentDirectory, UserFolder.OutputPath(Lookup(), Systems.Linux));

        static string Of(Systems system, params (string, string)[] variables) => UserFolder.ConfigPath(Lookup(variables), system);

        static Func<string, string?> Lookup(params (string Name, string Value)[] variables) =>
            name => variables.FirstOrDefault(one => one.Name == name).Value;
    }

    private static void AssertSentence(string problem, string part)
    {
        Assert.Contains(part, problem, StringComparison.Ordinal);
        Assert.EndsWith(".", problem, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem);
    }
}
