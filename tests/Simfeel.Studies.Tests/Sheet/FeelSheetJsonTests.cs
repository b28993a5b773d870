using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet;

namespace Simfeel.Studies.Tests.Sheet;

public class FeelSheetJsonTests
{
    private static readonly JsonSerializerOptions Options = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    private static JsonNode Json(FeelSheet sheet) => JsonSerializer.SerializeToNode(FeelSheetJson.Of(sheet), Options)!;

    [Fact]
    public void Numbers_are_those_of_the_records()
    {
        FeelSheet sheet = SampleSheet.Of;
        JsonNode json = Json(sheet);
        foreach ((MetricPair pair, JsonNode? node) in sheet.Comparison.Metrics.Zip(json["metrics"]!.AsArray()))
        {
            Assert.Equal(pair.Metric.Name, (string?)node!["name"]);
            Assert.Equal(pair.A, (double)node["a"]!);
            Assert.Equal(pair.B, (double)node["b"]!);
            Assert.Equal(pair.DifferencePercent, (double)node["difference_percent"]!);
            Assert.Equal(1.5 * pair.B, (double)node["other_policy"]!["b"]!);
            Assert.Equal(sheet.Uncertainty.Of(pair.Metric.Name)!.Difference.High, (double)node["difference_band"]!["percentile_95"]!);
        }
        Assert.Equal(sheet.Comparison.Metrics.Count, json["metrics"]!.AsArray().Count);
        Assert.Equal(
            sheet.Blame[0].Shares.Select(share => share.Share),
            json["blame"]![0]!["shares"]!.AsArray().Select(share => (double)share!["share"]!));
        Assert.Null(json["blame"]![1]!["shares"]);
        Assert.Equal(sheet.Growth[0].Points.Select(point => point.Factor), json["growth"]![0]!["points"]!.AsArray().Select(point => (double)point!["factor"]!));
        Assert.Equal(sheet.Uncertainty.Metrics[0].A.Low, (double)json["uncertainty"]!["metrics"]![0]!["a"]!["percentile_5"]!);
        Assert.Equal(sheet.Styles[0].Total, (double)json["styles"]![0]!["total_percent"]!);
        Assert.Equal(sheet.A.Craft.Mass, (double)json["mass"]!["a"]!["mass_kg"]!);
        Assert.Equal(sheet.Differences.Count, json["differences"]!.AsArray().Count);
    }

    /// <summary>The kinds of part add up to the craft: starter builds have no measured balance or inertia.</summary>
    [Fact]
    public void The_mass_budget_adds_up()
    {
        JsonNode mass = Json(SampleSheet.Of)["mass"]!["b"]!;
        Assert.Equal((double)mass["mass_kg"]!, mass["kinds"]!.AsArray().Sum(kind => (double)kind!["mass_kg"]!), 9);
        for (int axis = 0; axis < 3; axis++)
        {
            Assert.Equal(
                (double)mass["inertia_xx_yy_zz_kg_m2"]![axis]!,
                mass["kinds"]!.AsArray().Sum(kind => (double)kind!["inertia_xx_yy_zz_kg_m2"]![axis]!), 9);
        }
    }

    /// <summary>At full throttle nothing is left to speed up with; the definition of the reserve.</summary>
    [Fact]
    public void Nothing_is_in_reserve_at_full_throttle()
    {
        JsonNode reserve = Json(SampleSheet.Of)["reserve"]!["a"]!;
        double hover = (double)reserve["hover"]!["reserve_up_Nm"]!;
        Assert.True(hover > 0);
        Assert.InRange(Math.Abs((double)reserve["full_throttle"]!["reserve_up_Nm"]!), 0, 1e-6 * hover);
        Assert.InRange((double)reserve["hover_reserve_up_all_motors_at_once_Nm"]!, 0, hover);
    }

    [Fact]
    public void What_is_missing_stays_missing()
    {
        var metrics = (IEnumerable<Dictionary<string, object?>>)FeelSheetJson.Of(SampleSheet.Missing("stop_time"))["metrics"]!;
        Assert.Equal(double.NaN, metrics.Single(metric => (string?)metric["name"] == "stop_time")["b"]);
    }

    [Fact]
    public void Keys_are_of_one_kind()
    {
        List<string> keys = [];
        Collect(Json(SampleSheet.Of));
        // lower case parted by underscores; units keep their own letters
        Assert.All(keys.Distinct(), key => Assert.Matches(new Regex("^[a-z0-9]+(_([a-z0-9]+|K|Pa|V|A|Nm|rad|kg|m3))*$"), key));

        void Collect(JsonNode? node)
        {
            if (node is JsonArray list)
            {
                foreach (JsonNode? item in list) Collect(item);
            }
            else if (node is JsonObject map)
            {
                foreach ((string key, JsonNode? value) in map)
                {
                    keys.Add(key);
                    Collect(value);
                }
            }
        }
    }
}
