using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Kernel;

/// <content>The stage that solves the battery together with the motors it feeds.</content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>
    /// Terminal voltage V of the pack that feeds all motors at once, and what follows from it. With E the source voltage
    /// and R0 its resistance, V^2 - E V + R0 (P_electronics + sum of P_k) = 0, where motor k takes P = i (e + R i) at
    /// i = (d V - e) / (R + k_c |w|): quadratic in V, or constant where the current limit holds. The motors at their
    /// limits are found by repeating from V = E; no delay is put into the loop, which could make it swing.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Battery(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load, T* dx)
    {
        BatteryLanes<T>* battery = &craft->Battery;
        load->SourceVoltage = OpenCircuitVoltage(battery, x[StateIndex.Charge]) - x[StateIndex.PairVoltage];
        load->PackVoltage = load->SourceVoltage;
        T zero = T.Of(0);
        for (int pass = 0; pass < BatteryPasses; pass++)
        {
            TerminalVoltage(x, command, craft, load);
            Motors(x, command, craft, load);
            // while no motor in any lane changes sides, another pass would find the same voltage to the last bit
            if (T.AllEqual(load->Unsettled, zero)) break;
        }
        if (!T.AllEqual(load->Unsettled, zero)) SettleVoltage(x, command, craft, load);

        T current = load->PackCurrent;
        dx[StateIndex.Charge] = -current;
        dx[StateIndex.PairVoltage] = T.Fms(
            current, battery->InversePairCapacitance, x[StateIndex.PairVoltage] * battery->PairRate);
    }

    /// <summary>
    /// Passes of the battery's search without a bracket. In four million random states of mixed motors 90 % settled in the
    /// first and all but 261 in three.
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

    /// <summary>One pass of <see cref="Battery"/>: the root for the motors that are at their limits at the voltage so far.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void TerminalVoltage(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        BatteryLanes<T>* battery = &craft->Battery;
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T zero = T.Of(0), one = T.Of(1), voltage = load->PackVoltage, source = load->SourceVoltage;
        T square = zero, linear = zero, constant = battery->ElectronicsPower;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            RotorLanes<T>* rotor = rotors + k;
            T w = x[StateIndex.RotorSpeed + k], d = command[k], resistance = rotor->Resistance;
            T e = rotor->Kt * w, y = MotorLaws<T>.Conductance(rotor, w);
            T free = MotorLaws<T>.FreeCurrent(d, voltage, e, y), least = rotor->BrakeLimit, most = rotor->CurrentLimit;
            loads[k].BackEmf = e;
            loads[k].Conductance = y;
            loads[k].LimitHeld = MotorLaws<T>.LimitHeld(free, least, most);

            // i = p V + r, where a limit holds p = 0 and r is that limit; P = R p^2 V^2 + p (e + 2 R r) V + r (e + R r)
            T p = T.IfLess(free, least, zero, T.IfLess(most, free, zero, d * y));
            T r = T.IfLess(free, least, least, T.IfLess(most, free, most, T.Fnma(e, y, zero)));
            T drop = resistance * r, rest = e + drop;
            square = T.Fma(resistance * p, p, square);
            linear = T.Fma(p, rest + drop, linear);
            constant = T.Fma(r, rest, constant);
        }
        T a = T.Fma(battery->Resistance, square, one);
        T b = T.Fnma(battery->Resistance, linear, source);
        T c = battery->Resistance * constant;
        // below 0 the pack cannot give the power asked for: the voltage is then held where it gives the most
        T inside = T.Max(T.Fnma(T.Of(4) * a, c, b * b), zero);
        voltage = (b + T.Sqrt(inside)) / (a + a);
        load->PackVoltage = voltage;
        load->PackCurrent = (source - voltage) * battery->InverseResistance;
    }

    /// <summary>
    /// Currents and torques of the motors at the pack's voltage, and which lanes have a motor that has come to one of its
    /// limits, or left it, since that voltage was sought.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Motors(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T voltage = load->PackVoltage, changes = T.Of(0);
        for (int k = 0; k < craft->RotorCount; k++)
        {
            T free = MotorLaws<T>.FreeCurrent(command[k], voltage, loads[k].BackEmf, loads[k].Conductance);
            T least = rotors[k].BrakeLimit, most = rotors[k].CurrentLimit;
            T current = MotorLaws<T>.HeldCurrent(free, least, most);
            changes = changes + T.Abs(MotorLaws<T>.LimitHeld(free, least, most) - loads[k].LimitHeld);
            loads[k].Current = current;
            loads[k].MotorTorque = MotorLaws<T>.ShaftTorque(rotors + k, current, x[StateIndex.RotorSpeed + k]);
        }
        load->Unsettled = changes;
    }

    /// <summary>
    /// The rare rest of <see cref="Battery"/>: a motor that meets its limit just between two voltages can make the search
    /// swing for ever, so the root is now kept between the voltages known to lie below and above it. Lanes that had settled
    /// keep their bits.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void SettleVoltage(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        T zero = T.Of(0), one = T.Of(1), half = T.Of(0.5), low = zero, high = T.Of(HighVoltage);
        for (int pass = 0; pass < BracketedPasses; pass++)
        {
            T before = load->PackVoltage, unsettled = load->Unsettled;
            T excess = T.Fma(craft->Battery.Resistance, PowerDrawn(craft, load), before * (before - load->SourceVoltage));
            low = T.IfLess(excess, zero, before, low);
            high = T.IfLess(excess, zero, high, before);
            TerminalVoltage(x, command, craft, load);
            T root = load->PackVoltage, middle = half * (low + high);
            T next = T.IfLess(low, root, T.IfLess(root, high, root, middle), middle);
            next = T.IfLess(zero, unsettled, next, before);
            load->PackVoltage = next;
            load->PackCurrent = (load->SourceVoltage - next) * craft->Battery.InverseResistance;
            Motors(x, command, craft, load);
            T missed = T.IfLess(zero, T.Abs(next - root), one, zero);
            load->Unsettled = load->Unsettled + missed;
            if (T.AllEqual(load->Unsettled, zero)) return;
        }
    }

    /// <summary>Power out of the pack at the motors' present currents, W.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T PowerDrawn(CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T power = craft->Battery.ElectronicsPower;
        for (int k = 0; k < craft->RotorCount; k++)
            power = T.Fma(loads[k].Current, T.Fma(rotors[k].Resistance, loads[k].Current, loads[k].BackEmf), power);
        return power;
    }
}
