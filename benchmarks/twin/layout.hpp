// Memory layouts shared with Simfeel.Physics.Kernel; the benchmark compares their sizes before it runs.
#pragma once

#include "lanes.hpp"

constexpr int max_rotors = 8;

// Places in a block of state.
enum StateIndex { position = 0, velocity = 3, attitude = 6, rate = 10, charge = 13, pair_voltage = 14, rotor_speed = 15, stride = 32 };

template <class T>
struct BatteryLanes {
    T inverse_capacity;
    T bend_offset, bends[11];
    T resistance, inverse_resistance;
    T inverse_pair_capacitance, pair_rate;
    T electronics_power;
};

template <class T>
struct RotorLanes {
    T x, y, z;
    T spin;
    T radius, disc_area, inverse_radius, lift_area, drag_area;
    T spin_inertia, inverse_spin_inertia;
    T kt;
    T resistance, commutation_droop;
    T current_limit, brake_limit;
    T torque_limit, saturation_per_ampere;
    T loss_torque, loss_torque_per_speed;
    TableLanes table;
};

// The twin does not integrate the inflow; these hold its place.
template <class T>
struct InflowLanes {
    T damping, apparent_volume;
};

template <class T>
struct CraftLanes {
    T inverse_mass;
    T ixx, iyy, izz, ixy, ixz, iyz;
    T axx, ayy, azz, axy, axz, ayz;
    T half_drag_x, half_drag_y, half_drag_z;
    T drag_point_x, drag_point_y, drag_point_z;
    BatteryLanes<T> battery;
    RotorLanes<T> rotors[max_rotors];
    InflowLanes<T> inflow[max_rotors];
    int rotor_count;
    int dynamic_inflow;
    void* fits;
};

template <class T>
struct FieldLanes {
    T density;
    T gravity;
    T wind_x, wind_y, wind_z;
    T thrust_factor[max_rotors];
};

template <class T>
struct RotorLoad {
    T current_per_volt, short_current;
    T sought_per_volt, sought_current;
    T current;
    T motor_torque;
    T hub_x, hub_y, flow_speed;
    T climb;
    CellLanes<T> cell;
    T thrust;
    T air_torque;
};

template <class T>
struct LoadLanes {
    T r00, r01, r02, r10, r11, r12, r20, r21, r22;
    T air_x, air_y, air_z;
    T force_x, force_y, force_z;
    T moment_x, moment_y, moment_z;
    T spin_momentum;
    T source_voltage, pack_voltage, pack_current, unsettled;
    RotorLoad<T> rotors[max_rotors];
};
