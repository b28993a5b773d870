using Simfeel.Flight;
using Simfeel.Flight.Tuning;
using Simfeel.Physics;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>How it was flown, what to mind, and what is left out.</summary>
internal static class FlownSection
{
    public static Section Of(FeelSheet sheet)
    {
        Comparison comparison = sheet.Comparison;
        PilotProfile profile = comparison.Profile;
        return new("flown", "How it was flown",
        [
            .. Cautions.Of(comparison).Select(caution => new Paragraph(caution, Tone.Warning)),
            new Paragraph(
                "This sheet is a calculation and makes no craft safe. Take propellers off for any work on the bench: a spinning propeller cuts. "
                    + "Lithium batteries burn when crushed, overcharged or drawn beyond their rating: charge them attended, on a surface that cannot burn. "
                    + "Fly away from people and within your local rules.",
                Tone.Warning),
            new Paragraph($"Tuning policy {comparison.Policy}: {TuningPolicies.Describe(comparison.B.Policy)}. Beside it, policy {sheet.OtherPolicy.Policy}: {TuningPolicies.Describe(sheet.OtherPolicy.B.Policy)}."),
            Tuning(sheet),
            Conditions(sheet),
            new BulletList(
            [
                $"{TitleSection.Air(sheet.A.Air)} {Effects(comparison.Field.Effects)}",
                $"Stick effort {comparison.Effort:F2} of full stick, start {comparison.Field.StartHeight:G4} m above the ground, seed {comparison.Field.Seed}, pack at {100 * profile.StateOfCharge:F0} % charge.",
                $"Feel bands ({comparison.Bands.NotFeltBelow_Percent:G4} and {comparison.Bands.FeltAbove_Percent:G4} %), weights of styles and which metric is more telling are our inference, not a published threshold.",
            ]),
            .. sheet.NotModelled.Count == 0 ? (Block[])[] : [new Heading("What is not modelled"), new BulletList(sheet.NotModelled)],
            new Paragraph($"Simfeel {sheet.Version}. Build files, SHA-256: {Signs.Of(false)} {sheet.Fingerprints.A}; {Signs.Of(true)} {sheet.Fingerprints.B}.", Tone.Quiet),
        ]);
    }

    private static string Effects(AirEffects effects) =>
        effects == AirEffects.None
            ? "Steady loads of the rotors only."
            : "Beyond the rotors' steady loads: " + string.Join(", ", new (AirEffects Effect, string Words)[]
            {
                (AirEffects.DynamicInflow, "lag of the induced flow"),
                (AirEffects.Wake, "thrust lost and shaken in wakes (an estimate)"),
                (AirEffects.Ground, "thrust gained near the ground"),
            }.Where(pair => effects.HasFlag(pair.Effect)).Select(pair => pair.Words)) + ".";

    private static DataTable Tuning(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        Comparison comparison = sheet.Comparison, other = sheet.OtherPolicy;
        string[] titles = [$"{Signs.Of(false)} {a}", $"{Signs.Of(true)} {b}"];
        return new(
            "What the tuning reached; crossover: how fast the controller answers; gain margin: how far from swinging by itself",
            [new("what"), .. titles.Select((title, n) => new Column(title, Tone: n == 0 ? Tone.BuildA : Tone.BuildB)), .. titles.Select(title => new Column($"{title}, {other.Policy}")), Column.Unit],
            [
                Line("roll crossover", "Hz", unit => Numbers.Fixed(unit.Roll.Crossover / (2 * Math.PI), 1)),
                Line("yaw crossover", "Hz", unit => Numbers.Fixed(unit.Yaw.Crossover / (2 * Math.PI), 1)),
                Line("phase margin, roll", "deg", unit => Numbers.Fixed(unit.Roll.PhaseMargin * 180 / Math.PI, 0)),
                Line("phase margin, yaw", "deg", unit => Numbers.Fixed(unit.Yaw.PhaseMargin * 180 / Math.PI, 0)),
                Line("gain margin, roll", "times", unit => Numbers.Fixed(unit.Roll.GainMargin, 1)),
                Line("gain margin, yaw", "times", unit => Numbers.Fixed(unit.Yaw.GainMargin, 1)),
            ]);

        Row Line(string what, string unit, Func<TunedUnit, string> number) =>
            new([what, number(comparison.A), number(comparison.B), number(other.A), number(other.B), unit]);
    }

    private static DataTable Conditions(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        PilotProfile profile = sheet.Comparison.Profile;
        FlightUnit unitA = sheet.Comparison.A.Unit, unitB = sheet.Comparison.B.Unit;
        return new(
            "Delays and rates from the thumb to the motor",
            [new("what"), new($"{Signs.Of(false)} {a}", Tone: Tone.BuildA), new($"{Signs.Of(true)} {b}", Tone: Tone.BuildB), Column.Unit],
            [
                Same("sticks read every", profile.StickPeriod * 1e3, 0, "ms"),
                Same("thumb, centre to full stick", profile.ThumbTime * 1e3, 0, "ms"),
                Same("radio", profile.RadioDelay * 1e3, 0, "ms"),
                Line("gyro low-pass", unitA.GyroLowPass_Hz, unitB.GyroLowPass_Hz, 0, "Hz"),
                Same("controller runs", 1 / profile.LoopPeriod, 0, "Hz"),
                Line("speed controller", unitA.CommandDelay * 1e3, unitB.CommandDelay * 1e3, 2, "ms"),
                Same("full roll and pitch stick", profile.RollPitch.Rate(1) * 180 / Math.PI, 0, "deg/s"),
                Same("full yaw stick", profile.Yaw.Rate(1) * 180 / Math.PI, 0, "deg/s"),
            ]);

        Row Same(string what, double value, int decimals, string unit) => Line(what, value, value, decimals, unit);

        static Row Line(string what, double a, double b, int decimals, string unit) => new([what, Numbers.Fixed(a, decimals), Numbers.Fixed(b, decimals), unit]);
    }
}
