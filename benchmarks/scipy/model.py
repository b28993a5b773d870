"""The flight model of the kernel once more, in NumPy: written from the physics, not from the C#.

Everything it needs (constants of one craft, its rotor table, air) comes from a folder that the benchmark program
exports. State, 15 numbers and one for each rotor, SI units:

    0:3 position, north east down     3:6 velocity      6:10 attitude, body to world, w x y z
    10:13 body rates                  13 charge         14 voltage over the RC pair     15: rotor speeds
"""

import json
import pathlib

import numpy as np


class Model:
    def __init__(self, folder):
        folder = pathlib.Path(folder)
        told = json.loads((folder / "craft.json").read_text())
        self.mass = told["mass"]
        self.inertia = np.array(told["inertia"])
        self.drag_area = np.array(told["drag_area"])
        self.drag_point = np.array(told["drag_point"])
        self.density, self.gravity = told["density"], told["gravity"]
        self.wind = np.array(told["wind"])

        battery = told["battery"]
        self.charge_nodes = np.array(battery["charge_nodes"])
        self.open_circuit = np.array(battery["open_circuit_voltage"])
        self.capacity = battery["capacity"]
        self.r0, self.r1, self.c1 = battery["series_resistance"], battery["pair_resistance"], battery["pair_capacitance"]
        self.electronics = battery["electronics_power"]

        rotors = told["rotors"]
        column = lambda name: np.array([rotor[name] for rotor in rotors])
        self.hub, self.spin, self.radius = column("hub"), column("spin"), column("radius")
        self.rotor_inertia, self.kt = column("spin_inertia"), column("kt")
        self.resistance, self.droop = column("resistance"), column("commutation_droop")
        self.most, self.least = column("current_limit"), -column("brake_current_limit")
        self.torque_limit = column("torque_limit")
        self.loss, self.loss_per_speed = column("loss_torque"), column("loss_torque_per_speed")
        self.rubbing_speed = told["rubbing_speed"]
        self.area = np.pi * self.radius**2
        # rotors turn freely about z, so they do not resist yaw
        resisting = self.inertia - np.diag([0, 0, self.rotor_inertia.sum()])
        self.inverse_inertia = np.linalg.inv(resisting)

        grid = told["grid"]
        self.in_plane_weight, self.speed_scale = grid["in_plane_weight"], grid["speed_scale"]
        axes = [(np.array(grid[name + "_knots"]), np.array(grid[name + "_cells"])) for name in ("angle", "in_plane", "speed")]
        self.axes = [(knots, np.concatenate([[0], np.cumsum(cells)])) for knots, cells in axes]
        self.last_cell = np.array([nodes[-1] - 1 for _, nodes in self.axes])[:, None]
        shape = [nodes[-1] + 1 for _, nodes in reversed(self.axes)] + [4]
        self.table = np.fromfile(folder / "table.f64", dtype="<f8").reshape(shape)

    def coefficients(self, tip, climb, in_plane2):
        """Thrust, torque, in-plane and pitch coefficients of every rotor, trilinear in the table."""
        speed2 = tip**2 + climb**2 + in_plane2
        speed = np.sqrt(speed2)
        slope = climb / (np.abs(climb) + np.abs(tip) + 1e-30)
        coordinates = (
            np.where(tip < 0, 2 - slope, slope),
            in_plane2 / (self.in_plane_weight * speed2 + in_plane2 + 1e-30),
            speed / (speed + self.speed_scale),
        )
        index = np.array([np.interp(at, knots, nodes) for at, (knots, nodes) in zip(coordinates, self.axes)])
        cell = np.minimum(index.astype(int), self.last_cell)
        x, y, z = (index - cell)[:, :, None]
        i, j, k = cell
        cut = self.table
        near = (cut[k, j, i] * (1 - x) + cut[k, j, i + 1] * x) * (1 - y) + (cut[k, j + 1, i] * (1 - x) + cut[k, j + 1, i + 1] * x) * y
        far = (cut[k + 1, j, i] * (1 - x) + cut[k + 1, j, i + 1] * x) * (1 - y) + (cut[k + 1, j + 1, i] * (1 - x) + cut[k + 1, j + 1, i + 1] * x) * y
        return (near * (1 - z) + far * z).T, speed

    def pack(self, state, duty):
        """Terminal voltage, pack current and motor currents: the pack gives what the motors at its voltage take."""
        source = np.interp(state[13] / self.capacity, self.charge_nodes, self.open_circuit) - state[14]
        emf = self.kt * state[15:]
        conductance = 1 / (self.resistance + self.droop * np.abs(state[15:]))
        voltage = source
        held = None
        for _ in range(20):
            free = (duty * voltage - emf) * conductance
            now = np.where(free < self.least, -1, np.where(free > self.most, 1, 0))
            if held is not None and (now == held).all():
                break
            held = now
            # i = p V + r, and the power R i^2 + e i is a quadratic in V
            p = np.where(held == 0, duty * conductance, 0.0)
            r = np.where(held == 0, -emf * conductance, np.where(held > 0, self.most, self.least))
            a = 1 + self.r0 * (self.resistance * p * p).sum()
            b = source - self.r0 * (p * (emf + 2 * self.resistance * r)).sum()
            c = self.r0 * (self.electronics + (r * (emf + self.resistance * r)).sum())
            voltage = (b + np.sqrt(max(b * b - 4 * a * c, 0.0))) / (2 * a)
        current = np.clip((duty * voltage - emf) * conductance, self.least, self.most)
        return voltage, (source - voltage) / self.r0, current

    def shaft_torque(self, current, speed):
        """Motor torque after losses: saturates while it drives, in proportion to the current while it brakes."""
        s = np.clip(current * self.kt / self.torque_limit, -3, 3)
        driving = self.torque_limit * s * (27 + s * s) / (27 + 9 * s * s)
        magnetic = np.where(current * speed < 0, self.kt * current, driving)
        return magnetic - self.loss_per_speed * speed - self.loss * np.clip(speed / self.rubbing_speed, -1, 1)

    def derivative(self, state, duty):
        w, x, y, z = state[6:10]
        rate, speeds = state[10:13], state[15:]
        to_world = np.array([
            [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
            [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
            [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
        ])
        air = (state[3:6] - self.wind) @ to_world
        _, pack_current, current = self.pack(state, duty)
        motor = self.shaft_torque(current, speeds)

        hub = air + cross(rate, self.hub)
        tip = speeds * self.radius
        (thrust_c, torque_c, in_plane_c, pitch_c), speed = self.coefficients(tip, -hub[:, 2], hub[:, 0]**2 + hub[:, 1]**2)
        flux = self.density * self.area * speed
        drag = in_plane_c * flux
        force = np.stack([-drag * hub[:, 0], -drag * hub[:, 1], -thrust_c * flux * speed], axis=1)
        # a disc lifts the side that meets the flow: a moment across the flow
        lift = pitch_c * flux * self.radius
        zero = np.zeros_like(lift)
        moment = cross(self.hub, force) + np.stack([-lift * hub[:, 1], lift * hub[:, 0], zero], axis=1)
        moment[:, 2] -= self.spin * motor

        body = -self.density / 2 * np.sqrt(air @ air) * self.drag_area * air
        all_force = force.sum(axis=0) + body
        all_moment = moment.sum(axis=0) + cross(self.drag_point, body)
        momentum = self.inertia @ rate
        momentum[2] += (self.spin * self.rotor_inertia * speeds).sum()

        result = np.empty_like(state)
        result[0:3] = state[3:6]
        result[3:6] = to_world @ all_force / self.mass
        result[5] += self.gravity
        p, q, r = rate
        result[6:10] = [
            (-x * p - y * q - z * r) / 2, (w * p + y * r - z * q) / 2, (w * q + z * p - x * r) / 2, (w * r + x * q - y * p) / 2]
        result[10:13] = self.inverse_inertia @ (all_moment - cross(rate, momentum))
        result[13] = -pack_current
        result[14] = pack_current / self.c1 - state[14] / (self.r1 * self.c1)
        air_torque = torque_c * flux * speed * self.radius
        result[15:] = (motor - air_torque) / self.rotor_inertia - self.spin * result[12]
        return result


def cross(a, b):
    """Cross product along the last axis; numpy.cross takes five times as long on vectors this short."""
    a, b = np.broadcast_arrays(a, b)
    ax, ay, az = a[..., 0], a[..., 1], a[..., 2]
    bx, by, bz = b[..., 0], b[..., 1], b[..., 2]
    return np.stack([ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx], axis=-1)
