using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Kernel;

/// <content>The stage that solves the battery together with the motors it feeds.</content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>
    /// The battery and the motors it feeds, solved together. With E the source voltage and R0 the resistance of the pack,
    /// V^2 - E V + R0 (P_electronics + sum of P_k) = 0, where motor k takes P = i (e + R i) at i = (d V - e) / (R + k_c |w|):
    /// quadratic in V, or constant where the current limit holds. Which motors are at their limits is found by repeating;
    /// no delay is put into the loop, which could make it swing. This first stage states E, and a voltage to begin with:
    /// that of the pack at the current of a state near by, so that the first pass nearly always settles it. Where one
    /// set of motors at their limits explains the voltage, what is found does not depend on where the search began.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void SourceVoltage(T* x, CraftLanes<T>* craft, LoadLanes<T>* load, T* dx)
    {
        BatteryLanes<T>* battery = &craft->Battery;
        T source = OpenCircuitVoltage(battery, x[StateIndex.Charge]) - x[StateIndex.PairVoltage];
        load->SourceVoltage = source;
        load->PackVoltage = T.Fma(battery->Resistance, dx[StateIndex.Charge], source);
    }

    /// <summary>Further passes, where any lane needs them, and what the current does to the battery.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void Battery(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load, T* dx)
    {
        T zero = T.Of(0);
        // while no motor in any lane changes sides, another pass would find the same voltage to the last bit
        for (int pass = 1; pass < BatteryPasses && !T.AllEqual(load->Unsettled, zero); pass++)
        {
            TerminalVoltage(x, command, craft, load);
            Motors(x, craft, load);
        }
        if (!T.AllEqual(load->Unsettled, zero)) SettleVoltage(x, command, craft, load);

        BatteryLanes<T>* battery = &craft->Battery;
        T current = load->PackCurrent;
        dx[StateIndex.Charge] = -current;
        dx[StateIndex.PairVoltage] = T.Fms(
            current, battery->InversePairCapacitance, x[StateIndex.PairVoltage] * battery->PairRate);
    }

    /// <summary>
    /// Passes of the battery's search without a bracket. From no current, in four million random states of mixed motors,
    /// 90 % settled in the first and all but 261 in three; from the current of the step before fewer need a second.
    /// </summary>
    private const int BatteryPasses = 3;

    /// <summary>Further passes with a bracket; two settled the rest.</summary>
    private const int BracketedPasses = 8;

    /// <summary>A voltage above that of any pack, V.</summary>
    private const double HighVoltage = 1e4;

    /// <summary>Open-circuit voltage, straight lines between the charge nodes: a sum of bends, so that no lane branches.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T OpenCircuitVoltage(BatteryLanes<T>* battery, T charge)
    {
        T s = T.Min(T.Max(charge * battery->InverseCapacity, T.Of(0)), T.Of(1));
        T* bend = (T*)&battery->Bends;
        T even = T.Fma(bend[0], s, battery->BendOffset), odd = bend[1] * T.Max(s, T.Of(0.05));
        even = T.Fma(bend[2], T.Max(s, T.Of(0.1)), even);
        odd = T.Fma(bend[3], T.Max(s, T.Of(0.2)), odd);
        even = T.Fma(bend[4], T.Max(s, T.Of(0.3)), even);
        odd = T.Fma(bend[5], T.Max(s, T.Of(0.4)), odd);
        even = T.Fma(bend[6], T.Max(s, T.Of(0.5)), even);
        odd = T.Fma(bend[7], T.Max(s, T.Of(0.6)), odd);
        even = T.Fma(bend[8], T.Max(s, T.Of(0.7)), even);
        odd = T.Fma(bend[9], T.Max(s, T.Of(0.8)), odd);
        return T.Fma(bend[10], T.Max(s, T.Of(0.9)), even) + odd;
    }

    /// <summary>One pass of the search: the root for the motors that are at their limits at the voltage so far.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void TerminalVoltage(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        BatteryLanes<T>* battery = &craft->Battery;
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* motor = (RotorLoad<T>*)&load->Rotors;
        T* speed = x + StateIndex.RotorSpeed, duty = command, end = command + craft->RotorCount;
        T zero = T.Of(0), voltage = load->PackVoltage, source = load->SourceVoltage;
        T square = zero, linear = zero, constant = battery->ElectronicsPower;
        for (; duty < end; duty++, speed++, rotor++, motor++)
        {
            // without limits i = p V + r
            T w = *speed, e = rotor->Kt * w, conductance = MotorLaws<T>.Conductance(rotor, w);
            T perVolt = *duty * conductance, shorted = T.Fnma(e, conductance, zero), free = T.Fma(perVolt, voltage, shorted);
            T held = MotorLaws<T>.HeldCurrent(free, rotor->BrakeLimit, rotor->CurrentLimit), beyond = T.Abs(free - held);

            // where a limit holds p = 0 and r is that limit; P = R p^2 V^2 + p (e + 2 R r) V + r (e + R r)
            T p = T.IfLess(zero, beyond, zero, perVolt), r = T.IfLess(zero, beyond, held, shorted);
            T resistance = rotor->Resistance, drop = resistance * r, rest = e + drop;
            square = T.Fma(resistance * p, p, square);
            linear = T.Fma(p, rest + drop, linear);
            constant = T.Fma(r, rest, constant);
            motor->CurrentPerVolt = perVolt;
            motor->ShortCurrent = shorted;
            motor->SoughtPerVolt = p;
            motor->SoughtCurrent = r;
        }
        T a = T.Fma(battery->Resistance, square, T.Of(1));
        T b = T.Fnma(battery->Resistance, linear, source);
        T c = battery->Resistance * constant;
        // below 0 the pack cannot give the power asked for: the voltage is then held where it gives the most
        T inside = T.Max(T.Fnma(T.Of(4) * a, c, b * b), zero);
        // the processor divides while it draws the root
        voltage = (b + T.Sqrt(inside)) * (T.Of(0.5) / a);
        load->PackVoltage = voltage;
        load->PackCurrent = (source - voltage) * battery->InverseResistance;
    }

    /// <summary>
    /// Currents and torques of the motors at the pack's voltage, and by how much the currents differ from those with which
    /// it was sought: by nothing, to the last bit, unless a motor has come to one of its limits, or left it.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void Motors(T* x, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* motor = (RotorLoad<T>*)&load->Rotors;
        T* speed = x + StateIndex.RotorSpeed, end = speed + craft->RotorCount;
        T voltage = load->PackVoltage, changes = T.Of(0);
        for (; speed < end; speed++, rotor++, motor++)
        {
            T free = T.Fma(motor->CurrentPerVolt, voltage, motor->ShortCurrent);
            T sought = T.Fma(motor->SoughtPerVolt, voltage, motor->SoughtCurrent);
            T current = MotorLaws<T>.HeldCurrent(free, rotor->BrakeLimit, rotor->CurrentLimit);
            changes = changes + T.Abs(current - sought);
            motor->Current = current;
            motor->MotorTorque = MotorLaws<T>.ShaftTorque(rotor, current, *speed);
        }
        load->Unsettled = changes;
    }

    /// <summary>
    /// The rare rest of <see cref="Battery"/>: a motor that meets its limit just between two voltages can make the search
    /// swing for ever, so the root is now kept between the voltages known to lie below and above it. Lanes that had settled
    /// keep their bits.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void SettleVoltage(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        T zero = T.Of(0), one = T.Of(1), half = T.Of(0.5), low = zero, high = T.Of(HighVoltage);
        for (int pass = 0; pass < BracketedPasses; pass++)
        {
            T before = load->PackVoltage, unsettled = load->Unsettled;
            T excess = T.Fma(craft->Battery.Resistance, PowerDrawn(x, craft, load), before * (before - load->SourceVoltage));
            low = T.IfLess(excess, zero, before, low);
            high = T.IfLess(excess, zero, high, before);
            TerminalVoltage(x, command, craft, load);
            T root = load->PackVoltage, middle = half * (low + high);
            T next = T.IfLess(low, root, T.IfLess(root, high, root, middle), middle);
            next = T.IfLess(zero, unsettled, next, before);
            load->PackVoltage = next;
            load->PackCurrent = (load->SourceVoltage - next) * craft->Battery.InverseResistance;
            Motors(x, craft, load);
            T missed = T.IfLess(zero, T.Abs(next - root), one, zero);
            load->Unsettled = load->Unsettled + missed;
            if (T.AllEqual(load->Unsettled, zero)) return;
        }
    }

    /// <summary>Power out of the pack at the motors' present currents, W.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T PowerDrawn(T* x, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T power = craft->Battery.ElectronicsPower;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            T current = loads[k].Current, backEmf = rotors[k].Kt * x[StateIndex.RotorSpeed + k];
            power = T.Fma(current, T.Fma(rotors[k].Resistance, current, backEmf), power);
        }
        return power;
    }
}
