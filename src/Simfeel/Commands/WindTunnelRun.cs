using Simfeel.Builds;
using Simfeel.CommandLine.Output;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Stand;
using Spectre.Console;

namespace Simfeel.CommandLine.Commands;

/// <summary><c>simfeel stand --propeller</c>: a propeller alone in a wind tunnel.</summary>
internal sealed class WindTunnelRun
{
    private const int MostRows = 10000;

    private readonly string _name;
    private readonly PropellerBlades _blades;
    private readonly AirState _air;
    private readonly WindTunnel _tunnel;
    private readonly WindTunnelPoint[] _points;
    private readonly Dictionary<double, double> _hoverInduced;

    private WindTunnelRun(string name, PropellerBlades blades, AirState air, (double Rpm, double Axial, double Edgewise)[] states)
    {
        _name = name;
        _blades = blades;
        _air = air;
        _tunnel = new(blades.Geometry(), air, blades.ThrustFactor, blades.TorqueFactor);
        _points = new WindTunnelPoint[states.Length];
        Parallel.For(0, states.Length, n => _points[n] = _tunnel.At(states[n].Rpm / TradeUnits.RpmPerRadian, states[n].Axial, states[n].Edgewise));
        _hoverInduced = _points.Select(p => p.Speed).Distinct().ToDictionary(speed => speed, _tunnel.HoverInducedVelocity);
    }

    /// <summary>The working states that options ask for: every speed with every axial and every edgewise flow.</summary>
    /// <exception cref="FormatException">An option is out of its range; the message says all.</exception>
    public static (double Rpm, double Axial, double Edgewise)[] States(StandCommand.Settings settings)
    {
        if (settings.Rpm is null) throw new FormatException("--rpm is missing; the wind tunnel of --propeller needs rotor speeds, 10 to 300000 rpm, such as --rpm 6000,8000.");
        double[] speeds = WindTunnelRange.List("--rpm", settings.Rpm, 10, 300000, "rpm", 20);
        int points = settings.ValuesInRange;
        if (points is < 2 or > 101) throw new FormatException($"--points is {points}; it must lie between 2 and 101.");
        double[] axial = WindTunnelRange.Values("--axial", settings.Axial ?? "0", -100, 150, "m/s", points);
        double[] edgewise = WindTunnelRange.Values("--edgewise", settings.Edgewise ?? "0", 0, 150, "m/s", points);
        int rows = speeds.Length * axial.Length * edgewise.Length;
        if (rows > MostRows) throw new FormatException($"These ranges make {rows} rows; at most {MostRows} are computed. Take fewer --points.");
        return [.. from rpm in speeds from along in axial from across in edgewise select (rpm, along, across)];
    }

    /// <summary>Measures and prints.</summary>
    /// <exception cref="UserError">The propeller cannot be read or is wrong.</exception>
    public static void Print(StandCommand.Settings settings)
    {
        (string name, PropellerSpec propeller) = BuildLibrary.LoadPropeller(settings.Propeller!);
        WindTunnelRun run = new(name, propeller.Blades, settings.Air, States(settings));
        if (settings.Json) run.PrintJson();
        else run.PrintTable();
    }

    private List<string> Cautions()
    {
        List<string> cautions = [];
        int fast = _points.Count(p => p.TipMach > WindTunnel.HighestMach), thick = _points.Count(p => p.Reynolds < _tunnel.LeastReynolds);
        if (fast > 0)
            cautions.Add($"Caution: in {fast} of {_points.Length} rows the advancing tip passes Mach {WindTunnel.HighestMach} (marked !M); real drag rises more than computed.");
        if (thick > 0)
            cautions.Add($"Caution: in {thick} of {_points.Length} rows the Reynolds number lies below the section's {_tunnel.LeastReynolds:F0} (marked !R); its lowest values are held there.");
        int weak = _points.Count(WeakDescent);
        if (weak > 0)
            cautions.Add($"Caution: in {weak} of {_points.Length} rows the propeller sinks through its own wake, at {WindTunnelPoint.SlowestWeakDescent} to {WindTunnelPoint.FastestWeakDescent} times its induced velocity of hover (marked !D); real flow is unsteady there, and the computed torque is up to 54 % too low against measured descents.");
        if (_blades.ThrustFactor != 1 || _blades.TorqueFactor != 1)
            cautions.Add($"The file's factors are in these numbers: thrust x {_blades.ThrustFactor:G4}, torque and in-plane drag x {_blades.TorqueFactor:G4}.");
        return cautions;
    }

    private void PrintJson() => JsonOutput.Print(new()
    {
        ["name"] = _name,
        ["diameter_m"] = _blades.Diameter,
        ["blades"] = _blades.Count,
        ["thrust_factor"] = _blades.ThrustFactor,
        ["torque_factor"] = _blades.TorqueFactor,
        ["air_density_kg_m3"] = _air.Density,
        ["cautions"] = Cautions(),
        ["rows"] = _points.Select(at => new Dictionary<string, object?>
        {
            ["rpm"] = at.Speed * TradeUnits.RpmPerRadian,
            ["axial_m_s"] = at.Axial,
            ["edgewise_m_s"] = at.Edgewise,
            ["thrust_N"] = at.Thrust,
            ["torque_Nm"] = at.Torque,
            ["power_W"] = at.Power,
            ["in_plane_N"] = at.InPlane,
            ["ct_propeller"] = at.PropellerThrustCoefficient,
            ["cp_propeller"] = at.PropellerPowerCoefficient,
            ["advance_ratio"] = at.AdvanceRatio,
            ["efficiency"] = at.Efficiency,
            ["ct_rotor"] = at.RotorThrustCoefficient,
            ["cq_rotor"] = at.RotorTorqueCoefficient,
            ["figure_of_merit"] = at.FigureOfMerit,
            ["induced_velocity_m_s"] = at.InducedVelocity,
            ["reynolds_75"] = at.Reynolds,
            ["tip_mach"] = at.TipMach,
            ["weak_descent"] = WeakDescent(at),
        }).ToList(),
    });

    private void PrintTable()
    {
        Console.WriteLine($"{_name}, {_blades.Count} blades of {_blades.Diameter / TradeUnits.Inch:F2} in diameter, in a wind tunnel with air of {_air.Density:F3} kg/m^3:");
        foreach (string sentence in WindTunnelHeadline.Of(_points)) Console.WriteLine(sentence);
        Console.WriteLine();
        // columns that would be empty are left out
        bool across = _points.Any(p => p.Edgewise != 0), hovers = _points.Any(p => p.FigureOfMerit is not null), marked = _points.Any(p => Mark(p).Length > 0);
        (string Title, bool Shown, Func<WindTunnelPoint, string> Text)[] columns =
        [
            ("rpm", true, p => $"{p.Speed * TradeUnits.RpmPerRadian:F0}"),
            ("axial m/s", true, p => Tables.Signed(p.Axial, 2)),
            ("edge m/s", across, p => $"{p.Edgewise:F2}"),
            ("thrust N", true, p => Tables.Signed(p.Thrust, 3)),
            ("torque N m", true, p => Tables.Signed(p.Torque, 5)),
            ("power W", true, p => Tables.Signed(p.Power, 2)),
            ("in-plane N", across, p => Tables.Signed(p.InPlane, 3)),
            ("J", true, p => Tables.Signed(p.AdvanceRatio, 3)),
            ("CT", true, p => Tables.Signed(p.PropellerThrustCoefficient, 4)),
            ("CP", true, p => Tables.Signed(p.PropellerPowerCoefficient, 4)),
            ("eta", true, p => p.Efficiency is double eta ? Tables.Signed(eta, 3) : "-"),
            ("rotor CT", true, p => Tables.Signed(p.RotorThrustCoefficient, 5)),
            ("rotor CQ", true, p => Tables.Signed(p.RotorTorqueCoefficient, 6)),
            ("FM", hovers, p => p.FigureOfMerit is double merit ? $"{merit:F3}" : "-"),
            ("induced m/s", true, p => Tables.Signed(p.InducedVelocity, 2)),
            ("Re 75 %", true, p => $"{p.Reynolds:F0}"),
            ("tip Mach", true, p => $"{p.TipMach:F3}"),
            ("marks", marked, Mark),
        ];
        columns = [.. columns.Where(c => c.Shown)];
        Table table = Tables.New([.. columns.Select(c => c.Title)]);
        foreach (WindTunnelPoint point in _points) table.AddRow([.. columns.Select(c => c.Text(point))]);
        Tables.Print(table);
        Console.WriteLine("J = V/(nD), CT = T/(rho n^2 D^4), CP = P/(rho n^3 D^5), eta = J CT/CP; rotor CT = T/(rho A (wR)^2), rotor CQ = Q/(rho A (wR)^2 R)"
            + (hovers ? ", FM = ideal over actual power of hover." : "."));
        Console.WriteLine("induced m/s: mean velocity that the propeller gives the air in its disc. Re 75 %: Reynolds number of the chord at 75 % of the radius, without the induced flow.");
        if (across)
            Console.WriteLine("edge m/s: flow across the shaft. in-plane N: drag of the disc against that flow, positive against it; in descent it may turn negative.");
        Console.WriteLine("Blade elements and momentum theory; no hub, motor or tunnel walls. Axial flow is positive where the propeller climbs or drives forward.");
        foreach (string caution in Cautions()) Console.WriteLine(caution);
    }

    private string Mark(WindTunnelPoint point) =>
        (point.TipMach > WindTunnel.HighestMach ? "!M" : "") + (point.Reynolds < _tunnel.LeastReynolds ? "!R" : "") + (WeakDescent(point) ? "!D" : "");

    private bool WeakDescent(WindTunnelPoint point) => point.IsWeakDescent(_hoverInduced[point.Speed]);
}
