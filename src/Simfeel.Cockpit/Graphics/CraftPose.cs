using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics;

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

/// <summary>An eye in the world.</summary>
/// <param name="Eye">Where it is, in the world, m.</param>
/// <param name="Look">Its axes (x ahead, y right, z down) to the world.</param>
/// <param name="VerticalFieldOfView">Angle between top and bottom of the picture, rad; above 0, below pi.</param>
/// <param name="Bend">0 straight lines stay straight; 1 a wide lens with equal angles per distance from the middle.</param>
public readonly record struct Camera(Vec3 Eye, Quat Look, double VerticalFieldOfView, double Bend);

/// <summary>How much the picture costs.</summary>
public enum Quality
{
    /// <summary>For software drawing: no shadow map, a blob under the craft, few plants.</summary>
    Low,

    /// <summary>Shadows, all plants.</summary>
    Medium,

    /// <summary>Fine shadows, smoothed edges.</summary>
    High,
}
