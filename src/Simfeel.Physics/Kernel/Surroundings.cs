using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Kernel;

/// <summary>What a refresh of the surroundings draws its noise from.</summary>
/// <param name="Seed">Seed of the run.</param>
/// <param name="Count">Which refresh this is.</param>
/// <param name="Interval">Time since the last one, s.</param>
public readonly record struct Refreshment(int Seed, long Count, double Interval);

/// <summary>Wakes and ground of every lane.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct SurroundingsLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Height of flat ground along world z (down), m.</summary>
    public T Ground;

    /// <summary>Of each rotor.</summary>
    public RotorSurroundingsArray<T> Rotors;
}

/// <summary>Wake of one rotor.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct RotorSurroundings<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Hover induced velocity per rotor speed, m.</summary>
    public T InflowPerSpeed;

    /// <summary>Hover induced velocity at the present speed, m/s.</summary>
    public T Hover;

    /// <summary>One over it, finite where the rotor stands, s/m.</summary>
    public T PerHover;

    /// <summary>Direction in which the in-plane flow comes, a unit vector in body axes.</summary>
    public T UpstreamX, UpstreamY;

    /// <summary>How far the wake moves down past the disc on its way over a length.</summary>
    public T Slope;

    /// <summary>How deep the rotor stands in wakes, 0 to 1, followed with a lag.</summary>
    public T Depth;

    /// <summary>Band-limited noise of variance 1.</summary>
    public T Noise;
}

/// <summary>Room for the wakes of the rotors of a craft.</summary>
[InlineArray(Craft.MaxRotors)]
public struct RotorSurroundingsArray<T>
    where T : unmanaged, ILane<T>
{
    private RotorSurroundings<T> _first;
}

/// <summary>
/// <see cref="WakeModel"/> and <see cref="GroundEffect"/> over lanes: from the flow at the rotors to a factor on each one's
/// thrust. The torque stays: what little is known of it lies within the estimate. Like the kernel it uses only operations
/// that round the same everywhere.
/// </summary>
internal static unsafe class Surroundings<T>
    where T : unmanaged, ILane<T>
{
    private const double TinySpeed = 1e-6;

    /// <summary>Height in radii that stands for ground without end below: its effect is lost in rounding.</summary>
    private const double FarHeight = 1e7;

    /// <summary>New factors of all rotors.</summary>
    /// <param name="x">State.</param>
    /// <param name="craft">Constants.</param>
    /// <param name="field">Receives the factors.</param>
    /// <param name="load">Attitude and flow at that state, <see cref="Kernel{T}.Flow"/>.</param>
    /// <param name="around">Wakes, renewed.</param>
    /// <param name="effects">Which effects act.</param>
    /// <param name="refreshment">Noise and time.</param>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    public static void Refresh(
        T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, SurroundingsLanes<T>* around,
        AirEffects effects, Refreshment refreshment)
    {
        RotorSurroundings<T>* rotors = (RotorSurroundings<T>*)&around->Rotors;
        T* factor = (T*)&field->ThrustFactor;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            rotors[k].Hover = rotors[k].InflowPerSpeed * T.Max(x[StateIndex.RotorSpeed + k], T.Of(0));
            Drift((RotorLoad<T>*)&load->Rotors + k, rotors + k);
            factor[k] = T.Of(1);
        }
        if ((effects & AirEffects.Wake) != 0)
        {
            for (int k = 0; k < craft->RotorCount; k++)
            {
                T depth = OwnWake(k, load, rotors);
                for (int j = 0; j < craft->RotorCount; j++)
                {
                    if (j != k) depth = depth + NeighboursWake(j, k, craft, rotors);
                }
                T white = T.Of(WakeNoise.At(refreshment.Seed, refreshment.Count, k));
                factor[k] = Shaken(T.Min(depth, T.Of(1)), white, refreshment.Interval, craft, k, rotors + k);
            }
        }
        if ((effects & AirEffects.Ground) != 0)
        {
            for (int k = 0; k < craft->RotorCount; k++) factor[k] = factor[k] * NearGround(x, k, craft, load, around);
        }
    }

    /// <summary>Where the wake of a rotor is carried: the air moves against the hub's own velocity, the wake down by (Vc + v_h).</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Drift(RotorLoad<T>* flow, RotorSurroundings<T>* rotor)
    {
        rotor->PerHover = T.Of(1) / (rotor->Hover + T.Of(TinySpeed));
        T perSpeed = T.Of(1) / (T.Sqrt(T.Fma(flow->HubX, flow->HubX, flow->HubY * flow->HubY)) + T.Of(TinySpeed));
        rotor->UpstreamX = flow->HubX * perSpeed;
        rotor->UpstreamY = flow->HubY * perSpeed;
        rotor->Slope = (flow->Climb + rotor->Hover) * perSpeed;
    }

    /// <summary><see cref="WakeModel.Depth"/>.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T OwnWake(int k, LoadLanes<T>* load, RotorSurroundings<T>* rotors)
    {
        RotorLoad<T>* flow = (RotorLoad<T>*)&load->Rotors + k;
        T descent = -(flow->Climb * rotors[k].PerHover);
        T up = Smooth((descent - T.Of(WakeModel.Begin)) * T.Of(1 / (WakeModel.Worst - WakeModel.Begin)));
        T down = Smooth((T.Of(WakeModel.End) - descent) * T.Of(1 / (WakeModel.End - WakeModel.Worst)));
        T swept = T.Of(4) * T.Fma(flow->HubX, flow->HubX, flow->HubY * flow->HubY) * (rotors[k].PerHover * rotors[k].PerHover);
        return up * down / T.Fma(swept, swept, T.Of(1));
    }

    /// <summary>
    /// How deep rotor k stands in the wake of rotor j, 0 to 1: the in-plane flow carries that wake over k while it moves
    /// down by its own speed (Vc + v_h) past the disc; beside or beyond one radius it misses.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T NeighboursWake(int j, int k, CraftLanes<T>* craft, RotorSurroundings<T>* rotors)
    {
        RotorLanes<T>* hubs = (RotorLanes<T>*)&craft->Rotors;
        T dx = hubs[k].X - hubs[j].X, dy = hubs[k].Y - hubs[j].Y, perRadius2 = hubs[k].InverseRadius * hubs[k].InverseRadius;
        T along = -T.Fma(dx, rotors[j].UpstreamX, dy * rotors[j].UpstreamY);
        T aside2 = T.Fma(dx, dx, T.Fma(dy, dy, -(along * along)));
        T drift = rotors[j].Slope * along;
        T one = T.Of(1), zero = T.Of(0);
        T level = T.Max(T.Fnma(drift * drift, perRadius2, one), zero), inLine = T.Max(T.Fnma(aside2, perRadius2, one), zero);
        // a rotor that hardly turns has hardly a wake
        T strength = rotors[j].Hover / (rotors[j].Hover + rotors[k].Hover + T.Of(TinySpeed));
        return T.IfLess(zero, along, T.Of(2) * T.Min(strength, T.Of(0.5)) * level * inLine, zero);
    }

    /// <summary>Lets depth and noise of a rotor follow with the wake's own lag and returns the factor on its thrust.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T Shaken(T depth, T white, double interval, CraftLanes<T>* craft, int k, RotorSurroundings<T>* rotor)
    {
        T rate = T.Of(interval / WakeModel.LagInRadii) * rotor->Hover * ((RotorLanes<T>*)&craft->Rotors)[k].InverseRadius;
        T share = rate / (T.Of(1) + rate);
        rotor->Depth = T.Fma(share, depth - rotor->Depth, rotor->Depth);
        // keeps the variance at 1 whatever the lag
        T gain = T.Sqrt((T.Of(2) - share) * share);
        rotor->Noise = T.Fma(gain, white, T.Fma(-share, rotor->Noise, rotor->Noise));
        T noise = T.Min(T.Max(rotor->Noise, T.Of(-WakeModel.MostDeviations)), T.Of(WakeModel.MostDeviations));
        return T.Fnma(rotor->Depth, T.Fma(T.Of(WakeModel.Spread), noise, T.Of(WakeModel.Loss)), T.Of(1));
    }

    /// <summary><see cref="GroundEffect.ThrustRatio"/> at the hub's height, less as the craft tilts.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T NearGround(T* x, int k, CraftLanes<T>* craft, LoadLanes<T>* load, SurroundingsLanes<T>* around)
    {
        RotorLanes<T>* hub = (RotorLanes<T>*)&craft->Rotors + k;
        RotorLoad<T>* flow = (RotorLoad<T>*)&load->Rotors + k;
        T below = T.Fma(load->R22, hub->Z, T.Fma(load->R21, hub->Y, T.Fma(load->R20, hub->X, x[StateIndex.Position + 2])));
        T clear = around->Ground - below;
        T height = T.Min(T.Max(clear * hub->InverseRadius, T.Of(GroundEffect.LeastHeight)), T.Of(FarHeight));
        T perHover = ((RotorSurroundings<T>*)&around->Rotors)[k].PerHover;
        T speed2 = T.Fma(flow->HubX, flow->HubX, flow->HubY * flow->HubY) * (perHover * perHover);
        T upright = T.Max(load->R22, T.Of(0));
        T far = T.Of(16) * height * height * (T.Of(1) + speed2);
        // beyond the edge of a cliff a craft may be lower than the ground, and there is none to blow against
        return T.IfLess(clear, T.Of(0), T.Of(1), far / T.Fnma(upright, upright, far));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Smooth(T t)
    {
        T s = T.Min(T.Max(t, T.Of(0)), T.Of(1));
        return s * s * T.Fnma(T.Of(2), s, T.Of(3));
    }
}
