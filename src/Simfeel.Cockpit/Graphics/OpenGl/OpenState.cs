using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>
/// The state of OpenGL at the start of every picture, whatever another library left: depth test on, back faces culled,
/// no blending, no scissors, colours stored as they are.
/// </summary>
internal static class OpenState
{
    /// <summary>Sets it.</summary>
    public static void Set(GL gl)
    {
        gl.Disable(EnableCap.FramebufferSrgb);
        gl.Disable(EnableCap.StencilTest);
        gl.Disable(EnableCap.ScissorTest);
        gl.Disable(EnableCap.Blend);
        gl.Disable(EnableCap.PolygonOffsetFill);
        gl.Disable(EnableCap.PrimitiveRestart);
        gl.Enable(EnableCap.DepthTest);
        gl.DepthFunc(DepthFunction.Less);
        gl.DepthMask(true);
        gl.DepthRange(0.0, 1.0);
        gl.ClearDepth(1.0);
        gl.ColorMask(true, true, true, true);
        gl.Enable(EnableCap.CullFace);
        gl.CullFace(TriangleFace.Back);
        gl.FrontFace(FrontFaceDirection.Ccw);
        gl.PolygonMode(TriangleFace.FrontAndBack, PolygonMode.Fill);
        gl.BlendEquation(BlendEquationModeEXT.FuncAdd);
        gl.BlendFuncSeparate(BlendingFactor.SrcAlpha, BlendingFactor.OneMinusSrcAlpha, BlendingFactor.Zero, BlendingFactor.One);
    }
}
