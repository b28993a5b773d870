using Simfeel.Builds.Assembly;
using Simfeel.Builds.Checks;
using Simfeel.Builds.Reading;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Estimates;

/// <summary>Fills in what a sheet leaves out and makes the build.</summary>
internal static class BuildFactory
{
    /// <summary>The build, or null where something is missing or does not fit together; findings are in <paramref name="bag"/>.</summary>
    public static Build? Make(BuildSheet sheet, DiagnosticBag bag)
    {
        SheetChecks.Run(sheet, bag);
        if (bag.HasErrors) return null;
        ValueLedger ledger = new(sheet);
        ledger.OrDefault("format");
        PropellerSpec propeller = PropellerRules.Resolve(ledger, sheet);
        FrameSpec frame = FrameRules.Resolve(ledger, sheet, propeller.Blades.Diameter);
        MotorSpec motor = MotorRules.Resolve(ledger);
        Build build = new()
        {
            Name = ledger.Word("name"),
            Description = ledger.Word("description"),
            ClassLabel = ledger.Word("class"),
            Frame = frame,
            Motor = motor,
            Propeller = propeller,
            SpeedController = PropellerRules.ResolveController(ledger, motor.Body),
            Battery = BatteryRules.Resolve(ledger, frame),
            Stack = BodyRules.Stack(ledger, frame, motor.Body),
            Camera = BodyRules.Camera(ledger, frame),
            Extras = BodyRules.Extras(ledger, sheet),
            Drag = new DragSpec { Area = Vec3.Zero, p_OD = Vec3.Zero },
            Gyro = BodyRules.Gyro(ledger),
            Pilot = BodyRules.Pilot(ledger),
            Measured = new MeasuredSpec(),
            Values = [],
            Sheet = sheet,
        };
        build = build with { Drag = DragRules.Resolve(ledger, PartPlacer.Place(build), frame) };
        build = WithWiring(build, ledger, sheet, bag);
        build = WithMeasured(build, ledger, sheet, bag);
        ConsistencyChecks.Run(build, sheet, bag);
        NotUsed(sheet, ledger, bag);
        return bag.HasErrors ? null : build with { Values = ledger.Values() };
    }

    /// <summary>The propeller alone, or null where something is missing; findings are in <paramref name="bag"/>.</summary>
    public static PropellerSpec? MakePropeller(BuildSheet sheet, DiagnosticBag bag)
    {
        SheetChecks.RunPropeller(sheet, bag);
        return bag.HasErrors ? null : PropellerRules.Resolve(new(sheet), sheet);
    }

    /// <summary>A number that was given and asked for by nobody, such as the sweep of arms that are not swept.</summary>
    private static void NotUsed(BuildSheet sheet, ValueLedger ledger, DiagnosticBag bag)
    {
        HashSet<string> used = [.. ledger.Values().Select(value => value.Key)];
        foreach ((string key, GivenNumber given) in sheet.Numbers.Where(pair => !used.Contains(pair.Key) && !bag.Concerns(pair.Key)))
            bag.Warning(given.At, key, given.Written, "This build makes no use of the key; it is ignored.", "its layout, its shape or another key decides");
    }

    /// <summary>Wiring is what a weighed mass leaves over, else a share of everything else.</summary>
    private static Build WithWiring(Build build, ValueLedger ledger, BuildSheet sheet, DiagnosticBag bag)
    {
        const string weighed = "measured.all_up_mass_g", wiring = "stack.wiring_mass_g";
        double sum = PartPlacer.Place(build).Sum(p => p.Mass.Mass);
        if (!ledger.Has(weighed)) return Wired(ledger.OrRule(wiring, 0.03 * sum, 0.4));
        double rest = ledger.Given(weighed) - sum;
        GivenNumber given = sheet.Numbers[weighed];
        if (rest < 0)
        {
            bag.Error(given.At, weighed, given.Written, $"The weighed mass is less than the sum of the parts, {sum * 1000:F1} g; allowed is {sum * 1000:F1} to 50000 g.", "weigh again with battery and propellers, or mend the parts");
            return build;
        }
        if (ledger.Has(wiring))
            bag.Warning(sheet.PlaceOf(wiring), wiring, sheet.Numbers[wiring].Written, $"The wiring is taken as {rest * 1000:F1} g, what the weighed mass leaves over.", "leave this key out");
        if (rest > 0.25 * (sum + rest))
            bag.Warning(given.At, weighed, given.Written, $"The parts explain only {100 * sum / (sum + rest):F0} % of the weighed mass; the rest is spread near the centre as wiring.", "add what is missing as [[extra]]");
        return Wired(rest);

        Build Wired(double mass) => build with { Stack = build.Stack with { WiringMass = mass } };
    }

    /// <summary>Measured balance point and inertia, as differences to what the parts give.</summary>
    private static Build WithMeasured(Build build, ValueLedger ledger, BuildSheet sheet, DiagnosticBag bag)
    {
        MassProperties all = MassProperties.Combine([.. PartPlacer.Place(build).Select(p => p.Mass)]);
        Vec3 inertia = new(
            Shift("measured.ixx_g_m2", all.I_BBcm_O.M00), Shift("measured.iyy_g_m2", all.I_BBcm_O.M11), Shift("measured.izz_g_m2", all.I_BBcm_O.M22));
        Vec3 balance = new(
            Shift("measured.balance_x_mm", all.p_OBcm_O.X), Shift("measured.balance_y_mm", all.p_OBcm_O.Y), Shift("measured.balance_z_mm", all.p_OBcm_O.Z));
        MeasuredChecks.Run(all, inertia, balance, build.Frame.Wheelbase, sheet, bag);
        return build with { Measured = new MeasuredSpec { BalanceShift = balance, InertiaShift = inertia } };

        double Shift(string key, double computed) => ledger.Has(key) ? ledger.Given(key) - computed : 0;
    }
}
