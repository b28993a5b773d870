using Simfeel.Builds.Reading;
using Simfeel.Studies.Metrics;
using Tomlyn.Syntax;

namespace Simfeel.Studies.Lessons;

/// <summary>Makes a lesson of its tables, or says what is wrong with them.</summary>
internal sealed class LessonBuilder(IReadOnlyList<LessonTable> tables, DiagnosticBag bag)
{
    /// <summary>The lesson; null where something is wrong.</summary>
    public static Lesson? Make(string name, IReadOnlyList<LessonTable> tables, DiagnosticBag bag)
    {
        LessonBuilder builder = new(tables, bag);
        LessonTable top = tables[0], about = builder.Table("lesson"), number = builder.Table("number");
        top.Number("format", bag);
        List<LessonSetting> same = builder.Same();
        LessonChange? change = builder.Change(same);
        LessonNumber? read = builder.Number(number);
        LessonPlot? plot = builder.Plot();
        (List<LessonChoice> choices, LessonRange? claim) = builder.Outcomes();
        LessonTry? own = change is null ? null : builder.Try(change);
        string title = about.Text("title", bag), topic = about.Text("topic", bag), idea = about.Text("idea", bag), build = about.Text("build", bag);
        (string A, string B) crafts = (about.Text("first", bag), about.Text("second", bag));
        bool blind = about.Flag("fly_blind", bag);
        double place = about.Number("place", bag);
        string question = builder.Table("question").Text("text", bag), explain = builder.Table("explain").Text("text", bag);
        string care = tables.Any(table => table.Kind == "care") ? builder.Table("care").Text("text", bag) : "";
        if (bag.HasErrors) return null;
        return new()
        {
            Name = name,
            Title = title,
            Topic = topic,
            Idea = idea,
            Build = build,
            CraftNames = crafts,
            FlyBlind = blind,
            Place = double.IsNaN(place) ? LessonFormat.LastPlace : (int)place,
            Same = same,
            Change = change!,
            Number = read!,
            Plot = plot!,
            Question = question,
            Choices = choices,
            Claim = claim!.Value,
            Explanation = explain,
            Try = own!,
            Care = care,
        };
    }

    private LessonTable Table(string kind) => tables.First(table => table.Kind == kind);

    private List<LessonSetting> Same()
    {
        List<LessonSetting> settings = [];
        LessonTable table = Table("same");
        foreach ((string name, ValueSyntax syntax, Place at) in table.Items)
        {
            if (Key("same", name, syntax, at) is not LessonKey key) continue;
            LessonValue? value = LessonReader.Value(key, syntax);
            if (value is not LessonValue given) bag.Error(at, $"same.{name}", syntax.ToString(), $"Allowed is {key.Spec.Range}.");
            else if (LessonKeys.Fault(key, given) is string fault) bag.Error(at, $"same.{name}", syntax.ToString(), fault);
            else settings.Add(new(key, given));
        }
        if (table.Item("drill.name") is null && Table("change").Item("drill.name") is null)
            bag.Error(table.At, "same.drill.name", "", $"The drill is missing; allowed is {LessonKeys.Find("drill.name")!.Spec.Range}.", "add drill.name = \"...\"");
        return settings;
    }

    /// <summary>The one change; a second one is refused, since nobody could tell then which of the two did it.</summary>
    private LessonChange? Change(List<LessonSetting> same)
    {
        LessonTable table = Table("change");
        if (table.Items.Count == 0)
        {
            bag.Error(table.At, "change", "", "Nothing is changed; a lesson changes exactly one key.", "write one key with two values, such as ballast.spread_percent = [0, 100]");
            return null;
        }
        foreach ((string second, ValueSyntax value, Place place) in table.Items.Skip(1))
        {
            (string first, _, Place line) = table.Items[0];
            bag.Error(place, $"change.{second}", value.ToString(), $"A lesson changes exactly one key, and {first} in line {line.Line} is one already; with two nobody could tell which did it.", "put it into [same], or make a second lesson");
        }
        (string name, ValueSyntax syntax, Place at) = table.Items[0];
        if (Key("change", name, syntax, at) is not LessonKey key) return null;
        if (same.Any(setting => setting.Key.Path == key.Path))
        {
            bag.Error(at, $"change.{name}", syntax.ToString(), "The same key stands in [same].", "leave it out there");
            return null;
        }
        LessonValue?[] values = syntax is ArraySyntax array ? [.. array.Items.Select(item => LessonReader.Value(key, item.Value))] : [];
        if (values is not [LessonValue a, LessonValue b])
        {
            bag.Error(at, $"change.{name}", syntax.ToString(), $"Allowed are two values [first, second], each {key.Spec.Range}.");
            return null;
        }
        string? fault = LessonKeys.Fault(key, a) ?? LessonKeys.Fault(key, b);
        if (fault is null && a == b) fault = "Both values are the same, so nothing would differ.";
        if (fault is null) return new(key, a, b);
        bag.Error(at, $"change.{name}", syntax.ToString(), fault);
        return null;
    }

    private LessonKey? Key(string table, string name, ValueSyntax value, Place at)
    {
        if (LessonKeys.Find(name) is LessonKey key) return key;
        string? near = LessonKeys.Near(name);
        bag.Error(at, $"{table}.{name}", value.ToString(), "There is no such key to set.", near is null ? "" : $"did you mean {near}?");
        return null;
    }

    private LessonNumber? Number(LessonTable table)
    {
        string metricName = table.Text("metric", bag), channelName = table.Text("channel", bag), readName = table.Text("read", bag), title = table.Text("title", bag);
        double from = table.Number("from_s", bag), to = table.Number("to_s", bag);
        if (bag.HasErrors) return null;
        bool isMetric = metricName.Length > 0;
        if (isMetric == channelName.Length > 0 || (!isMetric && readName.Length == 0))
        {
            bag.Error(table.At, "number", "", isMetric ? "Give metric or channel, not both." : "What is read is missing.", "write metric = \"stop_time\", or channel = \"rate\" and read = \"largest\"");
            return null;
        }
        if (to < from)
        {
            bag.Error(table.PlaceOf("to_s"), "number.to_s", $"{to}", $"The end is before the begin of {from} s.");
            return null;
        }
        if (isMetric)
        {
            Metric metric = LessonReader.MetricOf(metricName)!;
            if (FlownDrill() is string flown && flown != metric.Drill.Name)
            {
                bag.Error(table.PlaceOf("metric"), "number.metric", metricName, $"This metric is read from the drill {metric.Drill.Name}, and {flown} is flown.");
                return null;
            }
            return new() { Title = title.Length > 0 ? title : metric.Title, Display = metric.Display, Metric = metric };
        }
        FlightChannel channel = FlightChannel.Find(channelName)!;
        return new()
        {
            Title = title.Length > 0 ? title : channel.Title,
            Display = channel.Display,
            Channel = channel,
            Read = Enum.Parse<LessonRead>(readName, true),
            From = double.IsNaN(from) ? 0 : from,
            To = double.IsNaN(to) ? double.PositiveInfinity : to,
        };
    }

    /// <summary>The drill where it is the same for both.</summary>
    private string? FlownDrill() => (Table("same").Item("drill.name")?.Value as StringValueSyntax)?.Value;

    private LessonPlot? Plot()
    {
        LessonTable table = Table("plot");
        string name = table.Text("channel", bag);
        double from = table.Number("from_s", bag), to = table.Number("to_s", bag);
        if (to <= from) bag.Error(table.PlaceOf("to_s"), "plot.to_s", $"{to}", $"The end is not after the begin of {from} s.");
        return FlightChannel.Find(name) is FlightChannel channel
            ? new(channel, double.IsNaN(from) ? 0 : from, double.IsNaN(to) ? double.PositiveInfinity : to)
            : null;
    }

    private (List<LessonChoice> Choices, LessonRange? Claim) Outcomes()
    {
        LessonTable[] written = [.. tables.Where(table => table.Kind == "choice")];
        if (written.Length is < LessonFormat.FewestChoices or > LessonFormat.MostChoices)
            bag.Error(written[0].At, "choice", "", $"There are {written.Length} answers; allowed are {LessonFormat.FewestChoices} to {LessonFormat.MostChoices}.");
        LessonTable claimTable = Table("claim");
        LessonRange? claim = claimTable.Range(bag);
        List<LessonChoice> choices = [];
        foreach (LessonTable table in written)
        {
            if (table.Range(bag) is not LessonRange right) continue;
            if (claim is LessonRange said && said.IsPercent != right.IsPercent)
                bag.Error(table.At, "choice", "", "The claim counts in the other way.", "give percent everywhere, or difference everywhere");
            if (choices.Find(other => other.Right.Low < right.High && right.Low < other.Right.High) is LessonChoice twin)
                bag.Error(table.At, "choice", "", $"The outcomes overlap with those of \"{twin.Text}\"; one answer only can be right.");
            choices.Add(new(table.Text("text", bag), right));
        }
        if (claim is LessonRange claimed && !bag.HasErrors && !choices.Exists(choice => choice.Right.Low <= claimed.Low && claimed.High <= choice.Right.High))
            bag.Error(claimTable.At, "claim", "", "The claimed outcomes do not lie within those of one answer.", "narrow the claim or widen the answer");
        return (choices, claim);
    }

    private LessonTry? Try(LessonChange change)
    {
        LessonTable table = Table("try");
        double from = table.Number("from", bag), to = table.Number("to", bag);
        string text = table.Text("text", bag);
        if (double.IsNaN(from)) from = Math.Min(change.A.Number, change.B.Number);
        if (double.IsNaN(to)) to = Math.Max(change.A.Number, change.B.Number);
        if (change.Key.Words.Count > 0) return new(text, double.NaN, double.NaN);
        string? fault = !(from < to) ? "The least value is not below the largest one." : LessonKeys.Fault(change.Key, change.B with { Number = from }) ?? LessonKeys.Fault(change.Key, change.B with { Number = to });
        if (fault is null) return new(text, from, to);
        bag.Error(table.At, "try", "", fault);
        return null;
    }
}
