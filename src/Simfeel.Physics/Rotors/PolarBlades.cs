using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>The blades of an annulus with their polar evaluated at every blade position.</summary>
internal readonly struct PolarBlades : IAnnulusBlades<Lane1>
{
    private readonly RotorAnnulus _annulus;
    private readonly SectionPolar _polar;
    private readonly double _reynolds;
    private readonly double _mach;
    private readonly (double Sine, double Cosine)[] _azimuths;
    private readonly BladeElementOptions _options;
    private readonly double _friction;

    public PolarBlades(
        RotorAnnulus annulus,
        SectionPolar polar,
        double reynolds,
        double mach,
        (double Sine, double Cosine)[] azimuths,
        BladeElementOptions options)
    {
        _annulus = annulus;
        _polar = polar;
        _reynolds = reynolds;
        _mach = mach;
        _azimuths = azimuths;
        _options = options;
        _friction = polar.At(0, reynolds, mach).Drag;
    }

    public double Radius => _annulus.Radius;

    public bool Swirl => _options.Swirl;

    public Lane1 TipLoss(Lane1 sine) => Lane1.Of(_options.TipLoss ? _annulus.TipLoss(sine.v) : 1);

    public Lane1 MeanDrag(Lane1 tangential, Lane1 axial) => Lane1.Of(Mean(tangential.v, axial.v).Drag);

    private (double Thrust, double Drag) Mean(double tangential, double axial)
    {
        if (_options.SmallAngles)
        {
            double inflow = axial / tangential;
            SectionCoefficients s = _polar.At(_annulus.Twist - inflow, _reynolds, _mach);
            double dynamic = _annulus.HalfBladeArea * tangential * tangential;
            return (dynamic * s.Lift, dynamic * ((s.Lift * inflow) + s.Drag));
        }
        double angle = Math.IEEERemainder(_annulus.Twist - Math.Atan2(axial, tangential), 2 * Math.PI);
        SectionCoefficients section = _polar.At(angle, _reynolds, _mach);
        double scale = _annulus.HalfBladeArea * Math.Sqrt((tangential * tangential) + (axial * axial));
        return (
            scale * ((section.Lift * tangential) - (section.Drag * axial)),
            scale * ((section.Lift * axial) + (section.Drag * tangential)));
    }

    public Lane1 Thrust(in AnnulusFlow<Lane1> flow)
    {
        double sum = 0;
        foreach ((double sine, double cosine) in _azimuths)
            sum += Mean(flow.Tangential.v + (flow.InPlane.v * sine), flow.Axial.v + (flow.Gradient.v * cosine)).Thrust;
        return Lane1.Of(sum / _azimuths.Length);
    }

    public void Forces(in AnnulusFlow<Lane1> flow, Span<AnnulusForces> forces)
    {
        double thrust = 0, drag = 0, inPlane = 0, front = 0;
        foreach ((double sine, double cosine) in _azimuths)
        {
            double tangential = flow.Tangential.v + (flow.InPlane.v * sine);
            double axial = flow.Axial.v + (flow.Gradient.v * cosine);
            (double up, double against) = Mean(tangential, axial);
            double along = flow.InPlane.v * cosine;
            double speed = Math.Sqrt((tangential * tangential) + (axial * axial) + (along * along));
            double friction = _annulus.HalfBladeArea * _friction * speed * along;
            thrust += up;
            drag += against;
            inPlane += (against * sine) + (friction * cosine);
            front -= up * cosine;
        }
        double n = _azimuths.Length;
        forces[0] = new(thrust / n, drag / n, inPlane / n, front / n);
    }
}
