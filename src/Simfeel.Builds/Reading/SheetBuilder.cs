using System.Collections.Immutable;
using Simfeel.Builds.Format;
using Simfeel.Physics.Maths;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Reading;

/// <summary>Takes values off the syntax tree, checks each against its key and gathers them.</summary>
internal sealed class SheetBuilder(DiagnosticBag bag, string? folder, string? polarText)
{
    private const int MaxText = 2000;

    private readonly ImmutableDictionary<string, GivenNumber>.Builder _numbers = ImmutableDictionary.CreateBuilder<string, GivenNumber>(StringComparer.Ordinal);
    private readonly ImmutableDictionary<string, GivenText>.Builder _texts = ImmutableDictionary.CreateBuilder<string, GivenText>(StringComparer.Ordinal);
    private readonly ImmutableDictionary<string, Place>.Builder _tables = ImmutableDictionary.CreateBuilder<string, Place>(StringComparer.Ordinal);
    private ImmutableList<GivenPosition> _positions = [];
    private Place? _positionsAt;
    private BladeStations? _stations;
    private Place? _stationsAt;
    private GivenPolar? _polar;

    public BuildSheet Finish(string text, int extras) => new()
    {
        SourceName = bag.SourceName,
        Text = text,
        Numbers = _numbers.ToImmutable(),
        Texts = _texts.ToImmutable(),
        Tables = _tables.ToImmutable(),
        Positions = _positions,
        PositionsAt = _positionsAt,
        Stations = _stations,
        StationsAt = _stationsAt,
        Polar = _polar,
        ExtraCount = extras,
    };

    public void Table(string name, Place at) => _tables[name] = at;

    public void Set(string key, KeySpec spec, ValueSyntax value, Place at)
    {
        switch (spec.Kind)
        {
            case KeyKind.Number or KeyKind.Count:
                if (NumberReader.Read(key, spec, value, at, bag) is GivenNumber number) _numbers[key] = number;
                break;
            case KeyKind.Flag:
                if (value is BooleanValueSyntax flag)
                    _numbers[key] = Plain(flag.Value ? 1 : 0, at, value);
                else
                    WrongType(key, spec, value, at);
                break;
            case KeyKind.Positions:
                _positionsAt = at;
                ReadPositions(key, spec, value, at);
                break;
            case KeyKind.Stations:
                _stationsAt = at;
                _stations = StationReader.Read(key, spec, value, at, bag);
                break;
            case KeyKind.PolarFile:
                if (value is StringValueSyntax { Value: string name })
                    _polar = PolarFile.Read(key, spec, name, at, folder, polarText, bag);
                else
                    WrongType(key, spec, value, at);
                break;
            default:
                ReadText(key, spec, value, at);
                break;
        }
    }

    private void ReadText(string key, KeySpec spec, ValueSyntax value, Place at)
    {
        if (value is not StringValueSyntax { Value: string text })
        {
            WrongType(key, spec, value, at);
        }
        else if (spec.Kind == KeyKind.Text && text.Length > MaxText)
        {
            bag.Error(at, key, text, $"The text has {text.Length} characters; allowed is {spec.Range}.");
        }
        else if (OneLine.HasControls(text))
        {
            bag.Error(at, key, text, $"The text has control characters; allowed is {spec.Range}.", "write it without them");
        }
        else if (spec.Kind == KeyKind.Choice && !spec.Choices.Contains(text))
        {
            string? near = NearestName.Of(text, spec.Choices);
            bag.Error(at, key, $"\"{text}\"", $"Allowed is {spec.Range}.", near is null ? "" : $"did you mean \"{near}\"?");
        }
        else if (spec.Required && string.IsNullOrWhiteSpace(text))
        {
            bag.Error(at, key, "\"\"", $"The text is empty; allowed is {spec.Range}.");
        }
        else
        {
            _texts[key] = new(text, at);
        }
    }

    private void ReadPositions(string key, KeySpec spec, ValueSyntax value, Place at)
    {
        if (value is not ArraySyntax places)
        {
            WrongType(key, spec, value, at);
            return;
        }
        List<GivenPosition> read = [];
        foreach (ArrayItemSyntax place in places.Items)
        {
            double[]? numbers = place.Value is ArraySyntax inner ? [.. inner.Items.Select(i => NumberReader.Plain(i.Value))] : null;
            if (numbers is not { Length: 3 or 4 } || numbers.Any(n => !double.IsFinite(n))
                || numbers.Take(3).Any(n => n < spec.Minimum || n > spec.Maximum)
                || (numbers.Length == 4 && Math.Abs(numbers[3]) != 1))
            {
                bag.Error(SheetReader.PlaceOf(place), key, place.Value?.ToString() ?? "", $"This is no rotor position; allowed are {spec.Range}.", "x forward, y right, z down");
                return;
            }
            read.Add(new(spec.ToSI * new Vec3(numbers[0], numbers[1], numbers[2]), numbers.Length == 4 ? (int)numbers[3] : null));
        }
        if (read.Count is < 3 or > 8)
            bag.Error(at, key, value.ToString(), $"There are {read.Count} rotor positions; allowed are {spec.Range}.");
        else if (read.Any(p => p.Spin is null) && read.Any(p => p.Spin is not null))
            bag.Error(at, key, value.ToString(), $"Some rotors have a spin and some have none; allowed are {spec.Range}.", "give all of them a spin or none");
        else
            _positions = [.. read];
    }

    private void WrongType(string key, KeySpec spec, ValueSyntax value, Place at) =>
        bag.Error(at, key, value.ToString(), $"Allowed is {spec.Range}.", spec.Kind is KeyKind.Text or KeyKind.Choice or KeyKind.PolarFile && value is not StringValueSyntax ? "put text in double quotes" : "");

    private static GivenNumber Plain(double number, Place at, ValueSyntax value) =>
        new(number, number, number, ValueSource.Stated, at, value.ToString());
}
