namespace Simfeel.Physics.Rotors;

/// <summary>The blades of an annulus with their polar evaluated at every blade position.</summary>
internal readonly struct PolarBlades : IAnnulusBlades
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

    public double TipLoss(double sine) => _options.TipLoss ? _annulus.TipLoss(sine) : 1;

    public SectionForces Mean(double tangential, double axial)
    {
        if (_options.SmallAngles)
        {
            double inflow = axial / tangential;
            SectionCoefficients s = _polar.At(_annulus.Twist - inflow, _reynolds, _mach);
            double dynamic = _annulus.HalfBladeArea * tangential * tangential;
            return new(dynamic * s.Lift, dynamic * ((s.Lift * inflow) + s.Drag));
        }
        double angle = Math.IEEERemainder(_annulus.Twist - Math.Atan2(axial, tangential), 2 * Math.PI);
        SectionCoefficients section = _polar.At(angle, _reynolds, _mach);
        double scale = _annulus.HalfBladeArea * Math.Sqrt((tangential * tangential) + (axial * axial));
        return new(
            scale * ((section.Lift * tangential) - (section.Drag * axial)),
            scale * ((section.Lift * axial) + (section.Drag * tangential)));
    }

    public double Thrust(in AnnulusFlow flow)
    {
        double sum = 0;
        foreach ((double sine, double cosine) in _azimuths)
            sum += Mean(flow.Tangential + (flow.InPlane * sine), flow.Axial + (flow.Gradient * cosine)).Thrust;
        return sum / _azimuths.Length;
    }

    public AnnulusForces Forces(in AnnulusFlow flow)
    {
        double thrust = 0, drag = 0, inPlane = 0, front = 0;
        foreach ((double sine, double cosine) in _azimuths)
        {
            double tangential = flow.Tangential + (flow.InPlane * sine);
            double axial = flow.Axial + (flow.Gradient * cosine);
            SectionForces f = Mean(tangential, axial);
            double along = flow.InPlane * cosine;
            double speed = Math.Sqrt((tangential * tangential) + (axial * axial) + (along * along));
            double friction = _annulus.HalfBladeArea * _friction * speed * along;
            thrust += f.Thrust;
            drag += f.Drag;
            inPlane += (f.Drag * sine) + (friction * cosine);
            front -= f.Thrust * cosine;
        }
        double n = _azimuths.Length;
        return new(thrust / n, drag / n, inPlane / n, front / n);
    }
}
