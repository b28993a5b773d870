using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Guards;

/// <summary>Where all that one step depends on lies, the rotors' tables apart.</summary>
internal unsafe struct StepMemory<T>
    where T : unmanaged, ILane<T>
{
    public CraftLanes<T>* Constants;
    public FieldLanes<T>* Field;
    public GuardLanes<T>* Guard;
    public T* State;
    public T* Derivative;
    public T* Commands;
    public RotorFitLanes<T>* Fits;

    /// <summary>All numbers of a lane, in the order of <see cref="StepNumbers.Names"/>.</summary>
    public readonly double[] Read(int rotorCount, int lane)
    {
        double[] numbers = new double[StepNumbers.Names(rotorCount).Count];
        int at = 0;
        foreach (nint place in Places(rotorCount)) numbers[at++] = LaneMemory.Get((T*)place, lane);
        return numbers;
    }

    /// <summary>Sets all numbers in every lane.</summary>
    public readonly void Write(int rotorCount, ReadOnlySpan<double> numbers)
    {
        int at = 0;
        foreach (nint place in Places(rotorCount))
        {
            for (int lane = 0; lane < T.Width; lane++) LaneMemory.Set((T*)place, lane, numbers[at]);
            at++;
        }
    }

    /// <summary>Addresses of the numbers, in the order of their names.</summary>
    private readonly List<nint> Places(int rotorCount)
    {
        List<nint> places = [];
        Add(&Constants->InverseMass, StepNumbers.Body.Count);
        Add((T*)&Constants->Battery, StepNumbers.Battery.Count);
        Add((T*)Field, StepNumbers.Field.Count);
        Add((T*)Guard, StepNumbers.Guard.Count);
        Add(State, StepNumbers.State.Count);
        Add(Derivative, StepNumbers.State.Count);
        RotorLanes<T>* rotors = (RotorLanes<T>*)&Constants->Rotors;
        InflowLanes<T>* inflow = (InflowLanes<T>*)&Constants->Inflow;
        for (int k = 0; k < rotorCount; k++)
        {
            int speed = StateIndex.RotorSpeed + k, induced = StateIndex.Inflow(rotorCount) + k;
            Add((T*)(rotors + k), StepNumbers.Rotor.Count);
            Add((T*)(inflow + k), StepNumbers.Inflow.Count);
            Add((T*)&Field->ThrustFactor + k, 1);
            Add(Commands + k, 1);
            Add(State + speed, 1);
            Add(State + induced, 1);
            Add(Derivative + speed, 1);
            Add(Derivative + induced, 1);
            Add((T*)(Fits + k), StepNumbers.Fit.Count);
        }
        return places;

        void Add(T* first, int count)
        {
            for (int n = 0; n < count; n++) places.Add((nint)(first + n));
        }
    }
}

/// <summary>Names of the numbers that one step depends on, unit at the end, in the order in which they lie in memory.</summary>
internal static class StepNumbers
{
    public static readonly IReadOnlyList<string> Body =
    [
        "inverse_mass_1_kg", "ixx_kg_m2", "iyy_kg_m2", "izz_kg_m2", "ixy_kg_m2", "ixz_kg_m2", "iyz_kg_m2",
        "axx_1_kg_m2", "ayy_1_kg_m2", "azz_1_kg_m2", "axy_1_kg_m2", "axz_1_kg_m2", "ayz_1_kg_m2",
        "half_drag_x_m2", "half_drag_y_m2", "half_drag_z_m2", "drag_point_x_m", "drag_point_y_m", "drag_point_z_m",
    ];

    public static readonly IReadOnlyList<string> Battery =
    [
        "battery_inverse_capacity_1_A_s", "battery_bend_offset_V", .. Enumerable.Range(0, 11).Select(n => $"battery_bend{n}_V"),
        "battery_resistance_ohm", "battery_inverse_resistance_1_ohm", "battery_inverse_pair_capacitance_1_F", "battery_pair_rate_1_s",
        "electronics_power_W",
    ];

    public static readonly IReadOnlyList<string> Field = ["density_kg_m3", "gravity_m_s2", "wind_north_m_s", "wind_east_m_s", "wind_down_m_s"];

    public static readonly IReadOnlyList<string> Guard = ["mass_kg", "most_power_W"];

    public static readonly IReadOnlyList<string> State =
    [
        "position_north_m", "position_east_m", "position_down_m", "velocity_north_m_s", "velocity_east_m_s", "velocity_down_m_s",
        "attitude_w", "attitude_x", "attitude_y", "attitude_z", "roll_rate_rad_s", "pitch_rate_rad_s", "yaw_rate_rad_s",
        "charge_A_s", "pair_voltage_V",
    ];

    public static readonly IReadOnlyList<string> Rotor =
    [
        "x_m", "y_m", "z_m", "spin", "radius_m", "disc_area_m2", "inverse_radius_1_m", "lift_area_m2", "drag_area_m2",
        "signed_spin_inertia_kg_m2", "inverse_spin_inertia_1_kg_m2", "kt_N_m_A", "resistance_ohm", "commutation_droop_ohm_s_rad",
        "current_limit_A", "brake_limit_A", "torque_limit_N_m", "saturation_per_ampere_1_A", "loss_torque_N_m",
        "loss_torque_per_speed_N_m_s",
    ];

    public static readonly IReadOnlyList<string> Inflow = ["inflow_damping_m2", "apparent_volume_m3"];

    public static readonly IReadOnlyList<string> Fit =
    [
        .. new[] { "thrust", "torque", "drag", "pitch" }.SelectMany(load =>
            new[] { "constant", "speed", "axial", "in_plane" }.Select(part => $"fit_{load}_{part}")),
    ];

    /// <summary>All names for a craft with a number of rotors.</summary>
    public static IReadOnlyList<string> Names(int rotorCount) =>
    [
        .. Body, .. Battery, .. Field, .. Guard, .. State, .. State.Select(name => "before." + name),
        .. Enumerable.Range(1, rotorCount).SelectMany(number =>
            new[]
            {
                Rotor, Inflow, ["thrust_factor", "duty", "speed_rad_s", "induced_velocity_m_s", "before.speed_rad_s", "before.induced_velocity_m_s"], Fit,
            }.SelectMany(names => names).Select(name => $"rotor{number}.{name}")),
    ];
}
