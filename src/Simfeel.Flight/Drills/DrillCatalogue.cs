namespace Simfeel.Flight.Drills;

/// <summary>The drills that a plain script flies, all from level hover after <see cref="Drill.LeadIn"/>, and the list of all drills.</summary>
public static class DrillCatalogue
{
    /// <summary>Time that <c>catch</c> falls before the throttle opens, s.</summary>
    public const double FallBeforeCatch = 1;

    /// <summary>Time that <c>stop</c> holds the stick over before letting go, s.</summary>
    public const double TurnBeforeStop = 0.7;

    /// <summary>Time after letting go over which <c>stop</c> watches the craft swing back, s.</summary>
    public const double WatchAfterStop = 0.6;

    /// <summary>Time that <c>yaw</c> holds the stick over before letting go, s.</summary>
    public const double TurnBeforeYawStop = 0.8;

    /// <summary>Sink speed at the end of <c>wash</c>, m/s, and the time it takes, s.</summary>
    public const double WashSpeed = 14, WashTime = 5;

    /// <summary>Throttle stick for each m/s that <c>wash</c> sinks too fast.</summary>
    private const double WashThrottle = 0.05;

    /// <summary>Angle before level over which <c>flip</c> lets the stick back, rad.</summary>
    private const double FlipEase = Math.PI / 2;

    /// <summary>Angle before level at which <c>flip</c> opens the throttle, rad.</summary>
    private const double FlipThrottle = Math.PI / 3;

    /// <summary>Throttle stick for each m above the start and each m/s of climb with which <c>hover</c> keeps its height.</summary>
    private const double HoverHeightThrottle = 1, HoverClimbThrottle = 0.2;

    /// <summary>Hover for a while at the height of the start: power, current and rotor speed.</summary>
    public static Drill Hover { get; } = new(
        "hover", "Hover in still air: what it costs to stay up.", 2,
        (hover, _) => view =>
        {
            double up = -view.Sample.State.p_WB.Z, climb = -view.Sample.State.v_WB.Z;
            return new(0, 0, 0, Math.Clamp(hover - (HoverHeightThrottle * up) - (HoverClimbThrottle * climb), 0, 1));
        });

    /// <summary>Full throttle from hover.</summary>
    public static Drill Punch { get; } = new(
        "punch", "Full throttle from hover: how hard it leaves.", Drill.LeadIn + 2,
        (hover, effort) => view => new(0, 0, 0, view.Time < Drill.LeadIn ? hover : hover + (effort * (1 - hover))));

    /// <summary>Throttle closed, rotors at idle.</summary>
    public static Drill Drop { get; } = new(
        "drop", "Throttle closed: how it falls.", Drill.LeadIn + 5,
        (hover, effort) => view => new(0, 0, 0, view.Time < Drill.LeadIn ? hover : hover * (1 - effort)));

    /// <summary>A fall of one second, then full throttle until it is arrested.</summary>
    public static Drill Catch { get; } = new(
        "catch", "Full throttle after a second's fall: how soon it is caught.", Drill.LeadIn + FallBeforeCatch + 1.5,
        (hover, effort) => view =>
        {
            if (view.Time < Drill.LeadIn) return new(0, 0, 0, hover);
            if (view.Time < Drill.LeadIn + FallBeforeCatch) return new(0, 0, 0, 0);
            return new(0, 0, 0, hover + (effort * (1 - hover)));
        });

    /// <summary>Full roll stick.</summary>
    public static Drill Roll { get; } = new(
        "roll", "Full roll stick: how fast it starts to turn.", Drill.LeadIn + 0.8,
        (hover, effort) => view => new(view.Time < Drill.LeadIn ? 0 : effort, 0, 0, hover));

    /// <summary>A whole turn backwards with the throttle closed, then full throttle until it stops sinking.</summary>
    public static Drill Flip { get; } = new(
        "flip", "A full backward flip with the throttle closed: height it costs.", Drill.LeadIn + 1.8,
        (hover, effort) =>
        {
            bool recovered = false;
            return view =>
            {
                if (view.Time < Drill.LeadIn) return new(0, 0, 0, hover);
                double left = (2 * Math.PI) - view.Turned.Y;
                bool opened = left < FlipThrottle;
                recovered |= opened && view.Time > Drill.LeadIn + 0.1 && view.Sample.State.v_WB.Z <= 0;
                // the rate falls about with the square root of the angle left, as under steady braking
                double ease = Math.Clamp(left / FlipEase, -1, 1);
                double pitch = effort * Math.Sign(ease) * Math.Sqrt(Math.Abs(ease));
                double throttle = recovered ? hover : opened ? 1 : 0;
                return new(0, pitch, 0, throttle);
            };
        });

    /// <summary>Full roll stick until the rate is steady, then let go.</summary>
    public static Drill Stop { get; } = new(
        "stop", "Letting go of full roll stick: how soon and how cleanly it stops.", Drill.LeadIn + TurnBeforeStop + WatchAfterStop,
        (hover, effort) => view =>
            new(view.Time >= Drill.LeadIn && view.Time < Drill.LeadIn + TurnBeforeStop ? effort : 0, 0, 0, hover));

    /// <summary>Full yaw stick, then let go.</summary>
    public static Drill Yaw { get; } = new(
        "yaw", "Full yaw stick: how fast the nose swings.", Drill.LeadIn + TurnBeforeYawStop + 0.6,
        (hover, effort) => view =>
            new(0, 0, view.Time >= Drill.LeadIn && view.Time < Drill.LeadIn + TurnBeforeYawStop ? effort : 0, hover));

    /// <summary>
    /// A descent that quickens from hover to <see cref="WashSpeed"/> at full effort, so that every craft passes through the
    /// whole range of its own wake.
    /// </summary>
    public static Drill Wash { get; } = new(
        "wash", "Sinking ever faster through its own wake: how it is shaken.", Drill.LeadIn + WashTime,
        (hover, effort) => view =>
        {
            double wanted = effort * WashSpeed * Math.Clamp((view.Time - Drill.LeadIn) / WashTime, 0, 1);
            double error = view.Sample.State.v_WB.Z - wanted;
            return new(0, 0, 0, Math.Clamp(hover + (WashThrottle * error), 0, 1));
        });

    /// <summary>Those in which a plain script moves the sticks, in the order in which results are shown.</summary>
    public static IReadOnlyList<Drill> Scripted { get; } = [Drop, Catch, Punch, Roll, Stop, Flip, Yaw, Wash, Hover];

    /// <summary>All of them, in the order in which results are shown.</summary>
    public static IReadOnlyList<Drill> All { get; } = [.. Scripted, .. CourseDrills.All];
}
