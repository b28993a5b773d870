namespace Simfeel.Physics.Rotors;

/// <summary>
/// Dimensionless loads of a rotor in the bounded system: with U^2 = (wR)^2 + Vc^2 + Vx^2, density rho, disc area A,
/// <list type="bullet">
/// <item>thrust along the shaft, up: T = Thrust rho A U^2;</item>
/// <item>torque of the air against positive rotation: Q = Torque rho A R U^2 (negative: the flow drives the rotor);</item>
/// <item>in-plane drag H = InPlane rho A U Vx, against the in-plane velocity of the hub;</item>
/// <item>hub moment M = Pitch rho A R U Vx, positive where it lifts the side of the disc that meets the flow.</item>
/// </list>
/// InPlane and Pitch are divided by Vx/U once, so they stay finite and even at Vx = 0.
/// </summary>
public readonly record struct RotorCoefficients(double Thrust, double Torque, double InPlane, double Pitch);
