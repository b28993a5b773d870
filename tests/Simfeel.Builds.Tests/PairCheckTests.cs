using Simfeel.Builds.Checks;
using Simfeel.Builds.Writing;

namespace Simfeel.Builds.Tests;

/// <summary>A copied file that keeps the mass of the craft it was copied from.</summary>
public class PairCheckTests
{
    private static readonly string Text = File.ReadAllText(Path.Combine(BuildText.StarterDirectory(), "wagtail.toml"));

    [Fact]
    public void A_copy_with_heavier_motors_that_kept_the_weighed_mass_is_told()
    {
        Build copy = BuildText.Read(BuildWriter.WithMeasured(Text, [new("motor.mass_g", 38)]));
        // 33 g in the file: four motors of 5 g more
        string said = PairChecks.SwallowedChange(BuildText.Starter("wagtail"), copy)!;
        Assert.Contains("598.0 g", said, StringComparison.Ordinal);
        Assert.Contains("differ by 20.0 g", said, StringComparison.Ordinal);
        Assert.Equal(said, PairChecks.SwallowedChange(copy, BuildText.Starter("wagtail")));
    }

    /// <summary>Starter builds of one mass, a copy without the weighing, a copy weighed again, and a change of nothing that weighs.</summary>
    [Fact]
    public void Other_pairs_are_not()
    {
        Build wagtail = BuildText.Starter("wagtail");
        foreach (string other in (string[])["wagtail", "wagtail-swept", "pipit", "curlew"])
            Assert.Null(PairChecks.SwallowedChange(wagtail, BuildText.Starter(other)));
        string heavier = BuildWriter.WithMeasured(Text, [new("motor.mass_g", 38)]);
        Assert.Null(PairChecks.SwallowedChange(wagtail, BuildText.Read(BuildWriter.WithMeasured(heavier, [new("measured.all_up_mass_g", 618)]))));
        Assert.Null(PairChecks.SwallowedChange(wagtail, BuildText.Read(heavier[..heavier.IndexOf("[measured]", StringComparison.Ordinal)])));
    }
}
