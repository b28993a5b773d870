using System.Numerics;
using System.Runtime.InteropServices;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>The uniform block <c>Frame</c> (std140) that all shaders share.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct FrameUniforms
{
    /// <summary>From G to clip space.</summary>
    public Matrix4x4 ViewProjection;

    /// <summary>From G to the texture of the field's shadows.</summary>
    public Matrix4x4 FieldLight;

    /// <summary>From G to the texture of the craft's shadows, first craft.</summary>
    public Matrix4x4 CraftLightA;

    /// <summary>From G to the texture of the craft's shadows, second craft.</summary>
    public Matrix4x4 CraftLightB;

    /// <summary>Eye in G, m; time, s.</summary>
    public Vector4 Eye;

    /// <summary>Unit vector to the sun in G; height of the sea in G, m.</summary>
    public Vector4 Sun;

    /// <summary>Corner of the field's textures, m east and north; one over their width and height, 1/m.</summary>
    public Vector4 Area;

    /// <summary>Scale of the projection in x and y, one pixel in clip space in x and y.</summary>
    public Vector4 Screen;
}
