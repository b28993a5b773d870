using System.Globalization;
using Simfeel.Physics;

namespace Simfeel.Flight.Traces;

/// <summary>One number of a trace's header.</summary>
/// <param name="Key">Its key, unit at the end.</param>
/// <param name="Least">Least value.</param>
/// <param name="Largest">Largest value.</param>
/// <param name="Whole">A whole number.</param>
/// <param name="Get">Reads it off a header.</param>
/// <param name="Missing">Its value in files of before there was such a key; null where it has to be there.</param>
internal sealed record TraceNumber(string Key, double Least, double Largest, bool Whole, Func<TraceHeader, double> Get, double? Missing = null)
{
    /// <summary>The number in a text.</summary>
    /// <exception cref="TraceException">It is none, or out of its range.</exception>
    public double Parse(string text)
    {
        bool fits = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && value >= Least && value <= Largest && (!Whole || value == Math.Floor(value));
        // the 0 added turns the -0 that a damaged file may hold, and that other checks would take for negative, into 0
        return fits
            ? value + 0.0
            : throw new TraceException(
                $"The trace's {Key} is {TraceHeader.Shown(text)}; allowed is {(Whole ? "a whole number from " : "")}{Least:R} to {Largest:R}.");
    }
}

/// <summary>
/// The numbers of a trace's header. Ranges are wider than any flight needs; they keep a damaged file from asking for more memory
/// or time than there is.
/// </summary>
internal static class TraceNumbers
{
    private const double Turn = 1000;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<TraceNumber> All { get; } =
    [
        new("sample_rate_Hz", 1, 100_000, true, h => h.SampleRate),
        new("video_delay_s", 0, 10, false, h => h.VideoDelay),
        new("effects", 0, (int)AirEffects.All, true, h => (int)h.Conditions.Effects),
        new("seed", int.MinValue, int.MaxValue, true, h => h.Conditions.Seed),
        new("start_height_m", 0, 1e5, false, h => h.Conditions.StartHeight),
        new("wind_speed_m_s", 0, 100, false, h => h.Conditions.WindSpeed, Missing: 0),
        new("wind_from_rad", -Turn, Turn, false, h => h.Conditions.WindFrom, Missing: 0),
        new("air_temperature_K", 1, 1000, false, h => h.Air.Temperature),
        new("air_pressure_Pa", 1, 1e7, false, h => h.Air.Pressure),
        new("air_density_kg_m3", 1e-3, 100, false, h => h.Air.Density),
        new("air_sound_speed_m_s", 1, 1e4, false, h => h.Air.SoundSpeed),
        new("air_viscosity_Pa_s", 1e-7, 1, false, h => h.Air.Viscosity),
        new("pilot_step_rate_Hz", 100, 100_000, true, h => h.Profile.StepRate),
        new("pilot_steps_per_loop", 1, 1000, true, h => h.Profile.StepsPerLoop),
        new("pilot_steps_per_stick_reading", 1, 1000, true, h => h.Profile.StepsPerStickReading),
        new("pilot_radio_delay_s", 0, 10, false, h => h.Profile.RadioDelay),
        new("pilot_thumb_time_s", 1e-6, 100, false, h => h.Profile.ThumbTime),
        new("pilot_derivative_lowpass_Hz", 1e-3, 1e5, false, h => h.Profile.DerivativeLowPass_Hz),
        new("pilot_feed_forward_lowpass_Hz", 1e-3, 1e5, false, h => h.Profile.FeedForwardLowPass_Hz),
        new("pilot_feed_forward", 0, 100, false, h => h.Profile.FeedForward),
        new("pilot_state_of_charge", 0, 1, false, h => h.Profile.StateOfCharge),
        new("pilot_roll_pitch_centre_slope_rad_s", 0, Turn, false, h => h.Profile.RollPitch.CentreSlope),
        new("pilot_roll_pitch_end_rate_rad_s", 1e-6, Turn, false, h => h.Profile.RollPitch.EndRate),
        new("pilot_roll_pitch_shape", 0, 1, false, h => h.Profile.RollPitch.Shape),
        new("pilot_yaw_centre_slope_rad_s", 0, Turn, false, h => h.Profile.Yaw.CentreSlope),
        new("pilot_yaw_end_rate_rad_s", 1e-6, Turn, false, h => h.Profile.Yaw.EndRate),
        new("pilot_yaw_shape", 0, 1, false, h => h.Profile.Yaw.Shape),
    ];

    /// <summary>A header with its numbers, in the order of <see cref="All"/>.</summary>
    /// <exception cref="TraceException">Two of them do not go together.</exception>
    public static TraceHeader Apply(TraceHeader header, IReadOnlyList<double> values)
    {
        int at = 0;
        try
        {
            TraceHeader full = header with
            {
                SampleRate = (int)Next(),
                VideoDelay = Next(),
                Conditions = new() { Effects = (AirEffects)(int)Next(), Seed = (int)Next(), StartHeight = Next(), WindSpeed = Next(), WindFrom = Next() },
                Air = new(Next(), Next(), Next(), Next(), Next()),
                Profile = new()
                {
                    StepRate = (int)Next(),
                    StepsPerLoop = (int)Next(),
                    StepsPerStickReading = (int)Next(),
                    RadioDelay = Next(),
                    ThumbTime = Next(),
                    DerivativeLowPass_Hz = Next(),
                    FeedForwardLowPass_Hz = Next(),
                    FeedForward = Next(),
                    StateOfCharge = Next(),
                    RollPitch = new(Next(), Next(), Next()),
                    Yaw = new(Next(), Next(), Next()),
                },
            };
            Check(full);
            return full;
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw new TraceException($"The trace's stick curves, pilot_roll_pitch and pilot_yaw, are wrong: {e.Message.Split(" (Parameter", 2)[0]}", e);
        }

        double Next() => values[at++];
    }

    /// <summary>Refuses a sample rate that does not divide the stick readings, or rows too long to hold.</summary>
    /// <exception cref="TraceException">It does not.</exception>
    public static void Check(TraceHeader header)
    {
        double readings = 1 / (header.Profile.StickPeriod * header.SampleRate);
        if (Math.Abs(readings - header.ReadingsPerRow) > 1e-6 || header.ReadingsPerRow is < 1 or > TraceRow.MostReadings)
        {
            throw new TraceException(
                $"A trace of {header.SampleRate} rows a second does not fit sticks read {1 / header.Profile.StickPeriod:R} times a second: " +
                $"a row holds 1 to {TraceRow.MostReadings} whole readings.");
        }
    }
}
