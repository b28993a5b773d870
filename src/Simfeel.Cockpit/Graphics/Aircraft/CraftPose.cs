using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>Where and how one craft is drawn in a frame.</summary>
public struct CraftPose
{
    /// <summary>Position of the centre of gravity in the world, m.</summary>
    public Vec3 p_WB;

    /// <summary>Attitude, body to world.</summary>
    public Quat q_WB;

    /// <summary>Rotor speeds in each rotor's own direction, rad/s.</summary>
    public PerRotor RotorSpeeds;

    /// <summary>Angles that the rotors have turned, body axes, right-handed about z, rad.</summary>
    public PerRotor RotorAngles;

    /// <summary>Thrust of each rotor along -z of the body, N; for the arrows of the mass view.</summary>
    public PerRotor Thrust;

    /// <summary>A bit for each rotor whose propeller struck something.</summary>
    public int StruckRotors;

    /// <summary>0 is not drawn, 1 solid, between translucent (a shadow craft).</summary>
    public float Opacity;
}
