using Simfeel.Physics.Guards;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Kernel;

/// <summary>Writes a <see cref="Craft"/> into one lane of <see cref="CraftLanes{T}"/>.</summary>
internal static unsafe class CraftPacking
{
    /// <summary>Fills a lane.</summary>
    /// <exception cref="ArgumentException">A constant is out of range; the message names it and its value.</exception>
    public static void Pack<T>(CraftLanes<T>* lanes, int lane, Craft craft)
        where T : unmanaged, ILane<T>
    {
        CheckPositive(craft.Mass, "mass, kg");
        Mat3 inertia = craft.I_BBcm_B;
        double spin = 0;
        foreach (RotorConstants rotor in craft.Rotors) spin += rotor.SpinInertia;
        Mat3 resisting = inertia - Mat3.Diagonal(0, 0, spin);
        // positive definite where all leading minors are above 0 (Sylvester)
        CheckPositive(resisting.M00, "moment of inertia about x, kg m^2");
        CheckPositive((resisting.M00 * resisting.M11) - (resisting.M01 * resisting.M10), "second leading minor of the inertia tensor");
        CheckPositive(resisting.Determinant, "determinant of the inertia tensor less the rotors' spin inertias");
        Mat3 inverse = resisting.Inverse;

        Set(&lanes->InverseMass, 1 / craft.Mass);
        Set(&lanes->Ixx, inertia.M00);
        Set(&lanes->Iyy, inertia.M11);
        Set(&lanes->Izz, inertia.M22);
        Set(&lanes->Ixy, inertia.M01);
        Set(&lanes->Ixz, inertia.M02);
        Set(&lanes->Iyz, inertia.M12);
        Set(&lanes->Axx, inverse.M00);
        Set(&lanes->Ayy, inverse.M11);
        Set(&lanes->Azz, inverse.M22);
        Set(&lanes->Axy, inverse.M01);
        Set(&lanes->Axz, inverse.M02);
        Set(&lanes->Ayz, inverse.M12);
        Set(&lanes->HalfDragX, craft.DragArea.X / 2);
        Set(&lanes->HalfDragY, craft.DragArea.Y / 2);
        Set(&lanes->HalfDragZ, craft.DragArea.Z / 2);
        Set(&lanes->DragPointX, craft.p_BcmD_B.X);
        Set(&lanes->DragPointY, craft.p_BcmD_B.Y);
        Set(&lanes->DragPointZ, craft.p_BcmD_B.Z);
        PackBattery(&lanes->Battery, lane, craft.Battery);
        RotorLanes<T>* rotors = (RotorLanes<T>*)&lanes->Rotors;
        for (int k = 0; k < craft.Rotors.Count; k++) PackRotor(rotors + k, lane, craft.Rotors[k]);
        InflowLanes<T>* inflow = (InflowLanes<T>*)&lanes->Inflow;
        for (int k = 0; k < craft.Rotors.Count; k++)
        {
            double radius = craft.Rotors[k].Radius;
            Set(&inflow[k].Damping, Math.PI * radius * radius * DynamicInflow.LiftDamping(craft.Rotors[k].Table));
            Set(&inflow[k].ApparentVolume, DynamicInflow.ApparentMassFactor * radius * radius * radius);
        }

        void Set(T* at, double value) => LaneMemory.Set(at, lane, value);
    }

    /// <summary>Fills a lane of the surroundings' constants.</summary>
    public static void PackSurroundings<T>(SurroundingsLanes<T>* around, int lane, Craft craft)
        where T : unmanaged, ILane<T>
    {
        RotorSurroundings<T>* rotors = (RotorSurroundings<T>*)&around->Rotors;
        for (int k = 0; k < craft.Rotors.Count; k++)
            LaneMemory.Set(&rotors[k].InflowPerSpeed, lane, DynamicInflow.HoverInflow(craft.Rotors[k].Table) * craft.Rotors[k].Radius);
    }

    /// <summary>Fills a lane of the guard's bounds.</summary>
    public static void PackGuard<T>(GuardLanes<T>* guard, int lane, Craft craft)
        where T : unmanaged, ILane<T>
    {
        LaneMemory.Set(&guard->Mass, lane, craft.Mass);
        LaneMemory.Set(&guard->MostPower, lane, Guard.MostPower(craft.Battery));
    }

    /// <summary>Puts a lane into free air without wakes.</summary>
    public static void ClearSurroundings<T>(SurroundingsLanes<T>* around, FieldLanes<T>* field, int lane)
        where T : unmanaged, ILane<T>
    {
        RotorSurroundings<T>* rotors = (RotorSurroundings<T>*)&around->Rotors;
        for (int k = 0; k < Craft.MaxRotors; k++)
        {
            LaneMemory.Set(&rotors[k].Depth, lane, 0);
            LaneMemory.Set(&rotors[k].Noise, lane, 0);
            LaneMemory.Set((T*)&field->ThrustFactor + k, lane, 1);
        }
    }

    private static void PackBattery<T>(BatteryLanes<T>* lanes, int lane, BatteryConstants battery)
        where T : unmanaged, ILane<T>
    {
        CheckPositive(battery.Capacity, "battery capacity, A s");
        CheckPositive(battery.SeriesResistance, "battery resistance, ohm");
        CheckPositive(battery.PairCapacitance, "capacitance of the battery's RC pair, F");
        IReadOnlyList<double> nodes = BatteryConstants.ChargeNodes, voltage = battery.OpenCircuitVoltage;
        if (voltage.Count != nodes.Count)
            throw new ArgumentException($"The battery has {voltage.Count} open-circuit voltages; it needs {nodes.Count}.");
        Set(&lanes->InverseCapacity, 1 / battery.Capacity);
        T* bends = (T*)&lanes->Bends;
        double offset = voltage[0], slope = 0;
        for (int n = 1; n < nodes.Count; n++)
        {
            double next = (voltage[n] - voltage[n - 1]) / (nodes[n] - nodes[n - 1]);
            Set(bends + n - 1, next - slope);
            offset -= (next - slope) * nodes[n - 1];
            slope = next;
        }
        Set(&lanes->BendOffset, offset);
        Set(&lanes->Resistance, battery.SeriesResistance);
        Set(&lanes->InverseResistance, 1 / battery.SeriesResistance);
        Set(&lanes->InversePairCapacitance, battery.PairResistance > 0 ? 1 / battery.PairCapacitance : 0);
        Set(&lanes->PairRate, battery.PairResistance > 0 ? 1 / (battery.PairResistance * battery.PairCapacitance) : 0);
        Set(&lanes->ElectronicsPower, battery.ElectronicsPower);

        void Set(T* at, double value) => LaneMemory.Set(at, lane, value);
    }

    /// <summary>Fills a lane of one rotor's constants.</summary>
    public static void PackRotor<T>(RotorLanes<T>* lanes, int lane, RotorConstants rotor)
        where T : unmanaged, ILane<T>
    {
        CheckPositive(rotor.Radius, "rotor radius, m");
        CheckPositive(rotor.SpinInertia, "rotor spin inertia, kg m^2");
        CheckPositive(rotor.Kt, "motor torque constant, N m/A");
        CheckPositive(rotor.Resistance, "motor resistance, ohm");
        CheckPositive(rotor.TorqueLimit, "motor torque limit, N m");
        Set(&lanes->X, rotor.p_BcmR_B.X);
        Set(&lanes->Y, rotor.p_BcmR_B.Y);
        Set(&lanes->Z, rotor.p_BcmR_B.Z);
        Set(&lanes->Spin, rotor.Spin);
        Set(&lanes->Radius, rotor.Radius);
        double area = Math.PI * rotor.Radius * rotor.Radius;
        Set(&lanes->DiscArea, area);
        Set(&lanes->InverseRadius, 1 / rotor.Radius);
        Set(&lanes->LiftArea, area * rotor.Table.LiftFactor);
        Set(&lanes->DragArea, area * rotor.Table.DragFactor);
        Set(&lanes->SignedSpinInertia, rotor.Spin * rotor.SpinInertia);
        Set(&lanes->InverseSpinInertia, 1 / rotor.SpinInertia);
        Set(&lanes->Kt, rotor.Kt);
        Set(&lanes->Resistance, rotor.Resistance);
        Set(&lanes->CommutationDroop, rotor.CommutationDroop);
        Set(&lanes->CurrentLimit, rotor.CurrentLimit);
        Set(&lanes->BrakeLimit, -rotor.BrakeCurrentLimit);
        Set(&lanes->TorqueLimit, rotor.TorqueLimit);
        Set(&lanes->SaturationPerAmpere, rotor.Kt / (3 * rotor.TorqueLimit));
        Set(&lanes->LossTorque, rotor.LossTorque);
        Set(&lanes->LossTorquePerSpeed, rotor.LossTorquePerSpeed);
        lanes->Table.Address[lane] = T.IsSingle ? (ulong)rotor.Table.PackedSingle : (ulong)rotor.Table.PackedDouble;

        void Set(T* at, double value) => LaneMemory.Set(at, lane, value);
    }

    private static void CheckPositive(double value, string what)
    {
        if (!(value > 0 && double.IsFinite(value)))
            throw new ArgumentException($"The {what}, is {value}; it must be above 0 and finite.");
    }
}
