// The flight kernel of Simfeel.Physics in C++, over a lane type: the same formulas in the same order of rounding, every
// stage inlined into the step. The physics is explained there.
#pragma once

#include "layout.hpp"

template <class T>
struct Kernel {
    static void midpoint_step(
        T* __restrict x, T* __restrict dx, const T* __restrict command, const CraftLanes<T>* __restrict craft,
        const FieldLanes<T>* __restrict field, LoadLanes<T>* __restrict load, T* __restrict scratch, double step) {
        int used = rotor_speed + craft->rotor_count;
        // the position is left out: no load depends on it
        advance(x, dx, scratch, T::of(0.5 * step), velocity, used);
        normalise(scratch + attitude);
        derivative(scratch, command, craft, field, load, dx);
        advance_to_end(x, dx, T::of(step), T::of(0.5 * step), used);
    }

    static void runge_kutta_step(
        T* __restrict x, const T* __restrict command, const CraftLanes<T>* __restrict craft,
        const FieldLanes<T>* __restrict field, LoadLanes<T>* __restrict load, T* __restrict scratch, double step) {
        T *k = scratch, *y = scratch + stride, *sum = scratch + 2 * stride;
        int used = rotor_speed + craft->rotor_count;
        T sixth = T::of(step / 6), third = T::of(step / 3), half = T::of(step / 2), whole = T::of(step);
        k[charge] = T::of(0);
        derivative(x, command, craft, field, load, k);
        advance(x, k, sum, sixth, 0, used);
        advance(x, k, y, half, 0, used);
        derivative(y, command, craft, field, load, k);
        advance(sum, k, sum, third, 0, used);
        advance(x, k, y, half, 0, used);
        derivative(y, command, craft, field, load, k);
        advance(sum, k, sum, third, 0, used);
        advance(x, k, y, whole, 0, used);
        derivative(y, command, craft, field, load, k);
        advance(sum, k, x, sixth, 0, used);
        normalise(x + attitude);
    }

private:
    using Craft = const CraftLanes<T>;
    using Field = const FieldLanes<T>;
    using Load = LoadLanes<T>;

    static constexpr int battery_passes = 3;
    static constexpr double tiny_speed = 1e-9, tiny_speed_squared = 1e-9;
    static constexpr double rubbing_speed = 20;
    static constexpr double in_plane_weight = 0.035, speed_scale = 1000, inside = 1e-5;

    static SIMFEEL_INLINE void derivative(
        const T* __restrict x, const T* __restrict command, Craft* __restrict craft, Field* __restrict field,
        Load* __restrict load, T* __restrict dx) {
        kinematics(x, field, load, dx);
        source_voltage(x, craft, load, dx);
        terminal_voltage(x, command, craft, load);
        rotor_flow(x, craft, load);
        motors(x, craft, load);
        battery(x, command, craft, load, dx);
        body_air(craft, field, load);
        rotor_air(x, craft, field, load);
        accelerations(x, craft, field, load, dx);
    }

    static SIMFEEL_INLINE void kinematics(const T* __restrict x, Field* __restrict field, Load* __restrict load, T* __restrict dx) {
        T qw = x[attitude], qx = x[attitude + 1], qy = x[attitude + 2], qz = x[attitude + 3];
        T one = T::of(1), half = T::of(0.5);
        T x2 = qx + qx, y2 = qy + qy, z2 = qz + qz;
        T wx2 = qw * x2, wy2 = qw * y2, wz2 = qw * z2;
        load->r00 = fnma(qy, y2, fnma(qz, z2, one));
        load->r01 = fms(qx, y2, wz2);
        load->r02 = fma(qx, z2, wy2);
        load->r10 = fma(qx, y2, wz2);
        load->r11 = fnma(qx, x2, fnma(qz, z2, one));
        load->r12 = fms(qy, z2, wx2);
        load->r20 = fms(qx, z2, wy2);
        load->r21 = fma(qy, z2, wx2);
        load->r22 = fnma(qx, x2, fnma(qy, y2, one));

        T vx = x[velocity], vy = x[velocity + 1], vz = x[velocity + 2];
        T ax = vx - field->wind_x, ay = vy - field->wind_y, az = vz - field->wind_z;
        load->air_x = fma(load->r20, az, fma(load->r10, ay, load->r00 * ax));
        load->air_y = fma(load->r21, az, fma(load->r11, ay, load->r01 * ax));
        load->air_z = fma(load->r22, az, fma(load->r12, ay, load->r02 * ax));
        dx[position] = vx;
        dx[position + 1] = vy;
        dx[position + 2] = vz;

        T wx = half * x[rate], wy = half * x[rate + 1], wz = half * x[rate + 2];
        dx[attitude] = -fma(qz, wz, fma(qy, wy, qx * wx));
        dx[attitude + 1] = fnma(qz, wy, fma(qw, wx, qy * wz));
        dx[attitude + 2] = fnma(qx, wz, fma(qw, wy, qz * wx));
        dx[attitude + 3] = fnma(qy, wx, fma(qw, wz, qx * wy));
    }

    static SIMFEEL_INLINE void body_air(Craft* __restrict craft, Field* __restrict field, Load* __restrict load) {
        T vx = load->air_x, vy = load->air_y, vz = load->air_z;
        T pressure = -(field->density * sqrt(fma(vx, vx, fma(vy, vy, vz * vz))));
        T fx = pressure * craft->half_drag_x * vx;
        T fy = pressure * craft->half_drag_y * vy;
        T fz = pressure * craft->half_drag_z * vz;
        T px = craft->drag_point_x, py = craft->drag_point_y, pz = craft->drag_point_z;
        load->force_x = fx;
        load->force_y = fy;
        load->force_z = fz;
        load->moment_x = fms(py, fz, pz * fy);
        load->moment_y = fms(pz, fx, px * fz);
        load->moment_z = fms(px, fy, py * fx);
    }

    static SIMFEEL_INLINE void source_voltage(
        const T* __restrict x, Craft* __restrict craft, Load* __restrict load, const T* __restrict dx) {
        T source = open_circuit_voltage(craft->battery, x[charge]) - x[pair_voltage];
        load->source_voltage = source;
        load->pack_voltage = fma(craft->battery.resistance, dx[charge], source);
    }

    static SIMFEEL_INLINE void battery(
        const T* __restrict x, const T* __restrict command, Craft* __restrict craft, Load* __restrict load, T* __restrict dx) {
        for (int pass = 1; pass < battery_passes && !all_equal(load->unsettled, T::of(0)); pass++) {
            terminal_voltage(x, command, craft, load);
            motors(x, craft, load);
        }
        // The bracketed search that C# falls back on is left out: no state of the benchmark needs it, and the set-up
        // refuses to run where the two differ.
        const BatteryLanes<T>& battery = craft->battery;
        T current = load->pack_current;
        dx[charge] = -current;
        dx[pair_voltage] = fms(current, battery.inverse_pair_capacitance, x[pair_voltage] * battery.pair_rate);
    }

    static SIMFEEL_INLINE T open_circuit_voltage(const BatteryLanes<T>& battery, T amount) {
        T s = min(max(amount * battery.inverse_capacity, T::of(0)), T::of(1));
        const T* bend = battery.bends;
        T even = fma(bend[0], s, battery.bend_offset), odd = bend[1] * max(s, T::of(0.05));
        even = fma(bend[2], max(s, T::of(0.1)), even);
        odd = fma(bend[3], max(s, T::of(0.2)), odd);
        even = fma(bend[4], max(s, T::of(0.3)), even);
        odd = fma(bend[5], max(s, T::of(0.4)), odd);
        even = fma(bend[6], max(s, T::of(0.5)), even);
        odd = fma(bend[7], max(s, T::of(0.6)), odd);
        even = fma(bend[8], max(s, T::of(0.7)), even);
        odd = fma(bend[9], max(s, T::of(0.8)), odd);
        return fma(bend[10], max(s, T::of(0.9)), even) + odd;
    }

    static SIMFEEL_INLINE void terminal_voltage(
        const T* __restrict x, const T* __restrict command, Craft* __restrict craft, Load* __restrict load) {
        const BatteryLanes<T>& battery = craft->battery;
        T zero = T::of(0), voltage = load->pack_voltage, source = load->source_voltage;
        T square = zero, linear = zero, constant = battery.electronics_power;
        for (int k = 0; k < craft->rotor_count; k++) {
            const RotorLanes<T>& rotor = craft->rotors[k];
            RotorLoad<T>& motor = load->rotors[k];
            T w = x[rotor_speed + k], e = rotor.kt * w;
            T conductance = T::of(1) / fma(rotor.commutation_droop, abs(w), rotor.resistance);
            T per_volt = command[k] * conductance, shorted = fnma(e, conductance, zero), free = fma(per_volt, voltage, shorted);
            T held = min(max(free, rotor.brake_limit), rotor.current_limit), beyond = abs(free - held);

            T p = if_less(zero, beyond, zero, per_volt), r = if_less(zero, beyond, held, shorted);
            T resistance = rotor.resistance, drop = resistance * r, rest = e + drop;
            square = fma(resistance * p, p, square);
            linear = fma(p, rest + drop, linear);
            constant = fma(r, rest, constant);
            motor.current_per_volt = per_volt;
            motor.short_current = shorted;
            motor.sought_per_volt = p;
            motor.sought_current = r;
        }
        T a = fma(battery.resistance, square, T::of(1));
        T b = fnma(battery.resistance, linear, source);
        T c = battery.resistance * constant;
        T under = max(fnma(T::of(4) * a, c, b * b), zero);
        voltage = (b + sqrt(under)) * (T::of(0.5) / a);
        load->pack_voltage = voltage;
        load->pack_current = (source - voltage) * battery.inverse_resistance;
    }

    static SIMFEEL_INLINE void motors(const T* __restrict x, Craft* __restrict craft, Load* __restrict load) {
        T voltage = load->pack_voltage, changes = T::of(0);
        for (int k = 0; k < craft->rotor_count; k++) {
            const RotorLanes<T>& rotor = craft->rotors[k];
            RotorLoad<T>& motor = load->rotors[k];
            T free = fma(motor.current_per_volt, voltage, motor.short_current);
            T sought = fma(motor.sought_per_volt, voltage, motor.sought_current);
            T current = min(max(free, rotor.brake_limit), rotor.current_limit);
            changes = changes + abs(current - sought);
            motor.current = current;
            motor.motor_torque = shaft_torque(rotor, current, x[rotor_speed + k]);
        }
        load->unsettled = changes;
    }

    static SIMFEEL_INLINE T shaft_torque(const RotorLanes<T>& rotor, T current, T speed) {
        T one = T::of(1), three = T::of(3);
        T u = min(max(current * rotor.saturation_per_ampere, T::of(-1)), one), u2 = u * u;
        T driving = rotor.torque_limit * (u * (three + u2) / fma(three, u2, one));
        T magnetic = if_less(current * speed, T::of(0), rotor.kt * current, driving);
        T rubbing = min(max(speed * T::of(1 / rubbing_speed), T::of(-1)), T::of(1));
        return fnma(rotor.loss_torque, rubbing, fnma(rotor.loss_torque_per_speed, speed, magnetic));
    }

    static constexpr double angle0 = 8 / 0.6, angle1 = 56 / 0.85, angle2 = 8 / 0.55, angle3 = 8;

    static SIMFEEL_INLINE T angle_index(T u) {
        T index = fma(T::of(angle0), u, T::of(angle0 + (0.4 * (angle1 - angle0)) - (0.45 * (angle2 - angle1)) - (angle3 - angle2)));
        index = fma(T::of(angle1 - angle0), max(u, T::of(-0.4)), index);
        index = fma(T::of(angle2 - angle1), max(u, T::of(0.45)), index);
        index = fma(T::of(angle3 - angle2), max(u, T::of(1)), index);
        return min(index, T::of(88 - inside));
    }

    static constexpr double in_plane0 = 5 / 0.1, in_plane1 = 13 / 0.78, in_plane2 = 6 / ((1 / (1 + in_plane_weight)) - 0.88);

    static SIMFEEL_INLINE T in_plane_index(T g) {
        T index = fma(T::of(in_plane0), g, T::of(-(0.1 * (in_plane1 - in_plane0)) - (0.88 * (in_plane2 - in_plane1))));
        index = fma(T::of(in_plane1 - in_plane0), max(g, T::of(0.1)), index);
        index = fma(T::of(in_plane2 - in_plane1), max(g, T::of(0.88)), index);
        return min(index, T::of(24 - inside));
    }

    static SIMFEEL_INLINE T speed_index(T z) {
        constexpr double nodes = 8 / (0.2 - 0.008);
        T index = fma(T::of(nodes), z, T::of(-0.008 * nodes));
        return min(max(index, T::of(0)), T::of(8 - inside));
    }

    static SIMFEEL_INLINE void rotor_flow(const T* __restrict x, Craft* __restrict craft, Load* __restrict load) {
        T wx = x[rate], wy = x[rate + 1], wz = x[rate + 2];
        T air_x = load->air_x, air_y = load->air_y, air_z = load->air_z;
        for (int k = 0; k < craft->rotor_count; k++) {
            const RotorLanes<T>& rotor = craft->rotors[k];
            RotorLoad<T>& flow = load->rotors[k];
            T hub_x = fnma(wz, rotor.y, fma(wy, rotor.z, air_x));
            T hub_y = fnma(wx, rotor.z, fma(wz, rotor.x, air_y));
            T climb = fnma(wx, rotor.y, fms(wy, rotor.x, air_z));
            T tip = x[rotor_speed + k] * rotor.radius;
            T in_plane2 = fma(hub_x, hub_x, hub_y * hub_y);
            T speed2 = fma(climb, climb, fma(tip, tip, T::of(tiny_speed_squared))) + in_plane2;
            T speed = sqrt(speed2);

            flow.hub_x = hub_x;
            flow.hub_y = hub_y;
            flow.flow_speed = speed;
            flow.climb = climb;

            T slope = climb / (abs(climb) + abs(tip) + T::of(tiny_speed));
            T angle = angle_index(if_less(tip, T::of(0), T::of(2) - slope, slope));
            T in_plane = in_plane_index(in_plane2 / fma(T::of(in_plane_weight), speed2, in_plane2));
            T pace = speed_index(speed / (speed + T::of(speed_scale)));
            locate(angle, in_plane, pace, rotor.table, flow.cell);
        }
    }

    static SIMFEEL_INLINE void rotor_air(
        const T* __restrict x, Craft* __restrict craft, Field* __restrict field, Load* __restrict load) {
        T force_x = load->force_x, force_y = load->force_y, force_z = load->force_z;
        T moment_x = load->moment_x, moment_y = load->moment_y, moment_z = load->moment_z, spin = T::of(0);
        for (int k = 0; k < craft->rotor_count; k++) {
            const RotorLanes<T>& rotor = craft->rotors[k];
            RotorLoad<T>& flow = load->rotors[k];
            Coefficients<T> c = interpolate(flow.cell);
            T speed = flow.flow_speed, hub_x = flow.hub_x, hub_y = flow.hub_y;
            T lift = field->density * rotor.lift_area * speed, flux = field->density * rotor.drag_area * speed;
            T thrust = c.thrust * (lift * speed) * field->thrust_factor[k];
            T drag = c.in_plane * flux;
            T pitch = fnma(rotor.z, drag, c.pitch * (lift * rotor.radius));
            force_x = fnma(drag, hub_x, force_x);
            force_y = fnma(drag, hub_y, force_y);
            force_z = force_z - thrust;
            moment_x = moment_x - fma(rotor.y, thrust, pitch * hub_y);
            moment_y = moment_y + fma(rotor.x, thrust, pitch * hub_x);
            T yaw = fma(drag, fms(rotor.x, hub_y, rotor.y * hub_x), rotor.spin * flow.motor_torque);
            moment_z = moment_z - yaw;
            spin = fma(rotor.spin_inertia, x[rotor_speed + k], spin);
            flow.thrust = thrust;
            flow.air_torque = c.torque * (flux * speed * rotor.radius);
        }
        load->force_x = force_x;
        load->force_y = force_y;
        load->force_z = force_z;
        load->moment_x = moment_x;
        load->moment_y = moment_y;
        load->moment_z = moment_z;
        load->spin_momentum = spin;
    }

    static SIMFEEL_INLINE void accelerations(
        const T* __restrict x, Craft* __restrict craft, Field* __restrict field, Load* __restrict load, T* __restrict dx) {
        T fx = load->force_x, fy = load->force_y, fz = load->force_z, inverse_mass = craft->inverse_mass;
        dx[velocity] = fma(load->r02, fz, fma(load->r01, fy, load->r00 * fx)) * inverse_mass;
        dx[velocity + 1] = fma(load->r12, fz, fma(load->r11, fy, load->r10 * fx)) * inverse_mass;
        dx[velocity + 2] = fma(fma(load->r22, fz, fma(load->r21, fy, load->r20 * fx)), inverse_mass, field->gravity);

        T wx = x[rate], wy = x[rate + 1], wz = x[rate + 2];
        T lx = fma(craft->ixz, wz, fma(craft->ixy, wy, craft->ixx * wx));
        T ly = fma(craft->iyz, wz, fma(craft->iyy, wy, craft->ixy * wx));
        T lz = fma(craft->izz, wz, fma(craft->iyz, wy, fma(craft->ixz, wx, load->spin_momentum)));
        T mx = fnma(wy, lz, fma(wz, ly, load->moment_x));
        T my = fnma(wz, lx, fma(wx, lz, load->moment_y));
        T mz = fnma(wx, ly, fma(wy, lx, load->moment_z));
        T yaw = fma(craft->azz, mz, fma(craft->ayz, my, craft->axz * mx));
        dx[rate] = fma(craft->axz, mz, fma(craft->axy, my, craft->axx * mx));
        dx[rate + 1] = fma(craft->ayz, mz, fma(craft->ayy, my, craft->axy * mx));
        dx[rate + 2] = yaw;
        for (int k = 0; k < craft->rotor_count; k++) {
            const RotorLanes<T>& rotor = craft->rotors[k];
            T torque = load->rotors[k].motor_torque - load->rotors[k].air_torque;
            dx[rotor_speed + k] = fms(torque, rotor.inverse_spin_inertia, rotor.spin * yaw);
        }
    }

    static SIMFEEL_INLINE void advance(const T* x, const T* __restrict dx, T* result, T h, int from, int used) {
        for (int n = from; n < used; n++) result[n] = fma(h, dx[n], x[n]);
    }

    static SIMFEEL_INLINE void normalise(T* q) {
        T qw = q[0], qx = q[1], qy = q[2], qz = q[3];
        T norm2 = fma(qw, qw, qx * qx) + fma(qy, qy, qz * qz);
        T mend = fma(T::of(-0.5), norm2, T::of(1.5));
        q[0] = qw * mend;
        q[1] = qx * mend;
        q[2] = qy * mend;
        q[3] = qz * mend;
    }

    static SIMFEEL_INLINE void advance_to_end(T* __restrict x, const T* __restrict dx, T h, T half, int used) {
        for (int n = charge; n < used; n++) x[n] = fma(h, dx[n], x[n]);
        for (int axis = 0; axis < 3; axis++) {
            T v = x[velocity + axis];
            T next = fma(h, dx[velocity + axis], v);
            x[position + axis] = fma(half, v + next, x[position + axis]);
            x[velocity + axis] = next;
        }

        T wx = x[rate], wy = x[rate + 1], wz = x[rate + 2];
        T ax = half * fma(half, dx[rate], wx);
        T ay = half * fma(half, dx[rate + 1], wy);
        T az = half * fma(half, dx[rate + 2], wz);
        x[rate] = fma(h, dx[rate], wx);
        x[rate + 1] = fma(h, dx[rate + 1], wy);
        x[rate + 2] = fma(h, dx[rate + 2], wz);

        T a2 = fma(ax, ax, fma(ay, ay, az * az));
        T one = T::of(1);
        T sinc = fnma(a2, fma(a2, T::of(-1.0 / 120), T::of(1.0 / 6)), one);
        T cos = fnma(a2, fma(a2, T::of(-1.0 / 24), T::of(0.5)), one);
        ax = ax * sinc;
        ay = ay * sinc;
        az = az * sinc;
        T* q = x + attitude;
        T qw = q[0], qx = q[1], qy = q[2], qz = q[3];
        q[0] = fnma(qz, az, fnma(qy, ay, fms(qw, cos, qx * ax)));
        q[1] = fnma(qz, ay, fma(qy, az, fma(qw, ax, qx * cos)));
        q[2] = fnma(qx, az, fma(qz, ax, fma(qw, ay, qy * cos)));
        q[3] = fnma(qy, ax, fma(qx, ay, fma(qw, az, qz * cos)));
        normalise(q);
    }
};
