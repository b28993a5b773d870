using Simfeel.Physics.Maths;

namespace Simfeel.Flight;

/// <summary>
/// What lies between a thumb and a motor and is the same for every build that is compared: stick curves, thumb speed,
/// delays and loop rates. Printed with every result.
/// </summary>
public sealed record PilotProfile
{
    /// <summary>
    /// Physics steps a second. Against 32 000, no metric of any starter build moves by more than a thousandth, 75 times less than the
    /// least difference that counts as felt (benchmarks, <c>--steps</c>); below 3334 the lag of the inflow
    /// (<see cref="Physics.Rotors.DynamicInflow.ShortestLag"/>) would be unstable.
    /// </summary>
    public int StepRate { get; init; } = 4000;

    /// <summary>Physics steps for each run of the rate controller.</summary>
    public int StepsPerLoop { get; init; } = 1;

    /// <summary>Physics steps between two readings of the sticks; also between two rows of a log.</summary>
    public int StepsPerStickReading { get; init; } = 4;

    /// <summary>Time from a stick's reading to the command at the controller (radio link), s.</summary>
    public double RadioDelay { get; init; } = 0.004;

    /// <summary>
    /// Time from the craft to the picture that the pilot sees (camera, video link, screen), s, beyond what pilots are used to. The
    /// <see cref="Pilots.VirtualPilot"/> sees so much later; plain scripts see no picture.
    /// </summary>
    public double DisplayDelay { get; init; }

    /// <summary>Time in which a quick thumb moves a stick from centre to full deflection, s.</summary>
    public double ThumbTime { get; init; } = 0.020;

    /// <summary>Cut-off of the derivative's first-order low-pass filter, Hz.</summary>
    public double DerivativeLowPass_Hz { get; init; } = 100;

    /// <summary>Cut-off of the feed-forward's first-order low-pass filter, Hz.</summary>
    public double FeedForwardLowPass_Hz { get; init; } = 30;

    /// <summary>Share of the commanded angular acceleration that is fed forward.</summary>
    public double FeedForward { get; init; } = 0.5;

    /// <summary>Charge of the pack at the start of a drill, 0 to 1.</summary>
    public double StateOfCharge { get; init; } = 0.9;

    /// <summary>Curve of roll and pitch.</summary>
    public StickCurve RollPitch { get; init; } = new(200 * Math.PI / 180, 800 * Math.PI / 180, 0.5);

    /// <summary>Curve of yaw.</summary>
    public StickCurve Yaw { get; init; } = new(150 * Math.PI / 180, 500 * Math.PI / 180, 0.5);

    /// <summary>Time between two runs of the rate controller, s.</summary>
    public double LoopPeriod => StepsPerLoop / (double)StepRate;

    /// <summary>Time between two readings of the sticks, s.</summary>
    public double StickPeriod => StepsPerStickReading / (double)StepRate;

    /// <summary>Rates about the body axes (rad/s) that a stick position commands.</summary>
    public Vec3 RateFor(Sticks sticks) =>
        new(RollPitch.Rate(sticks.Roll), RollPitch.Rate(sticks.Pitch), Yaw.Rate(sticks.Yaw));
}
