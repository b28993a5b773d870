using Simfeel.Builds.Estimates;
using Simfeel.Builds.Reading;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Checks;

/// <summary>Whether the parts of a build fit together. All limits of what is usual are common practice.</summary>
internal static class ConsistencyChecks
{
    private const double SoundSpeed = 340;
    private const double JoulePerWattHour = 3600;

    public static void Run(Build build, BuildSheet sheet, DiagnosticBag bag)
    {
        Report report = new(sheet, bag);
        Winding(build, report);
        MotorMass(build, report);
        EnergyDensity(build, report);
        TipSpeed(build, report);
        BatteryCurrent(build, report);
        Spins(build, report);
        bool plateGiven = sheet.Numbers.ContainsKey("frame.plate_width_mm") || sheet.Numbers.ContainsKey("frame.plate_length_mm");
        ClearanceChecks.Run(build, plateGiven, report.Say);
    }

    /// <summary>R KV^2 of one stator size is nearly constant: Km^2 = Kt^2/R grows with the copper and the lever arm only.</summary>
    private static void Winding(Build build, Report report)
    {
        double expected = MotorRules.ExpectedResistance(build.Motor.Electrics.Kt, build.Motor.Body.StatorVolume);
        double ratio = build.Motor.Electrics.WindingResistance / expected;
        if (ratio is < 0.4 or > 2.5)
        {
            report.Say(Severity.Warning, "motor.winding_resistance_mohm",
                $"With this KV and stator {1e3 * expected:F1} mohm would be usual; usual is {400 * expected:F1} to {2500 * expected:F1} mohm.",
                "is it the resistance between two wires, and the KV of this winding?");
        }
    }

    private static void MotorMass(Build build, Report report)
    {
        double usual = MotorRules.ReferenceMass * Math.Pow(build.Motor.Body.StatorVolume / MotorRules.ReferenceVolume, 0.85);
        double ratio = build.Motor.Body.Mass / usual;
        if (ratio is < 0.5 or > 2)
            report.Say(Severity.Warning, "motor.mass_g", $"A stator of this size makes a motor of about {1e3 * usual:F1} g; usual is {500 * usual:F1} to {2000 * usual:F1} g.", "check the stator's size and the mass of one motor");
        if (build.Motor.Body.OuterDiameter < build.Motor.Body.StatorDiameter)
            report.Say(Severity.Error, "motor.outer_diameter_mm", $"The bell is narrower than the stator; allowed is {1e3 * build.Motor.Body.StatorDiameter:G4} to 150 mm.", "measure across the bell");
    }

    private static void EnergyDensity(Build build, Report report)
    {
        double density = build.Battery.NominalEnergy / JoulePerWattHour / build.Battery.Mass;
        if (density is > 80 and < 270) return;
        Severity severity = density is < 40 or > 400 ? Severity.Error : Severity.Warning;
        double wattHours = build.Battery.NominalEnergy / JoulePerWattHour;
        report.Say(severity, "battery.mass_g",
            $"The pack would hold {density:F0} Wh/kg; usual is 80 to 270 Wh/kg, here {1e3 * wattHours / 270:F0} to {1e3 * wattHours / 80:F0} g.",
            "check cells, capacity and mass");
    }

    private static void TipSpeed(Build build, Report report)
    {
        double noLoad = build.Battery.CellVoltage[^1] * build.Battery.Cells / build.Motor.Electrics.Kt;
        double mach = noLoad * build.Propeller.Blades.Diameter / 2 / SoundSpeed;
        if (mach > 1.05)
            report.Say(Severity.Warning, "motor.kv_rpm_per_V", $"Without load the propeller's tips would reach Mach {mach:F2}; usual is 0.3 to 1.05.", "KV, cells and propeller hardly belong together");
    }

    private static void BatteryCurrent(Build build, Report report)
    {
        double wanted = build.Frame.Mounts.Count * build.SpeedController.CurrentLimit;
        if (build.Battery.CurrentRating * 5 < wanted)
            report.Say(Severity.Warning, "battery.current_rating_A", $"The speed controllers may ask for {wanted:F0} A; usual is a pack of at least {wanted / 5:F0} A.", "such a pack sags deeply and gets hot");
    }

    private static void Spins(Build build, Report report)
    {
        int sum = build.Frame.Mounts.Sum(m => m.Spin);
        if (Math.Abs(sum) > 1 || (sum != 0 && build.Frame.Mounts.Count % 2 == 0))
            report.Say(Severity.Warning, "frame.positions_mm", $"{build.Frame.Mounts.Count(m => m.Spin > 0)} rotors turn clockwise and {build.Frame.Mounts.Count(m => m.Spin < 0)} the other way; allowed, but usual are equal numbers.", "it will turn about its vertical axis unless others hold it");
        Vec3 centre = build.Frame.Mounts.Aggregate(Vec3.Zero, (a, m) => a + m.p_OM) / build.Frame.Mounts.Count;
        double radius = build.Frame.Wheelbase / 2;
        if (build.Frame.Mounts.All(m => double.Hypot(m.p_OM.X - centre.X, m.p_OM.Y - centre.Y) < 0.05 * radius) || Flat(build.Frame.Mounts))
            report.Say(Severity.Error, "frame.positions_mm", "All rotors stand in one line, so nothing holds the craft upright; allowed are places around the centre.", "check the signs of y");
    }

    private static bool Flat(IReadOnlyList<MotorMount> mounts)
    {
        foreach (MotorMount a in mounts)
            foreach (MotorMount b in mounts)
            {
                Vec3 ab = b.p_OM - mounts[0].p_OM, aa = a.p_OM - mounts[0].p_OM;
                if (Math.Abs((ab.X * aa.Y) - (ab.Y * aa.X)) > 1e-5) return false;
            }
        return true;
    }

    private sealed class Report(BuildSheet sheet, DiagnosticBag bag)
    {
        public void Say(Severity severity, string key, string message, string hint)
        {
            string value = sheet.Numbers.TryGetValue(key, out GivenNumber? number) ? number.Written : "";
            if (severity == Severity.Error) bag.Error(sheet.PlaceOf(key), key, value, message, hint);
            else bag.Warning(sheet.PlaceOf(key), key, value, message, hint);
        }
    }
}
