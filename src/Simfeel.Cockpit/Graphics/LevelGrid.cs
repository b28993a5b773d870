using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.OpenGl;

namespace Simfeel.Cockpit.Graphics;

/// <summary>
/// A level plane with a line every metre and a bold one every five, which stays where it is in the world. What is drawn of it
/// goes along with the eye's craft, so that it has no end.
/// </summary>
internal sealed class LevelGrid
{
    /// <summary>Radius of what is drawn, m.</summary>
    private const float Radius = 45;

    private readonly GL _gl;
    private readonly ShaderProgram _program;
    private readonly uint _square;
    private readonly int _model;

    /// <summary>Makes it.</summary>
    public LevelGrid(GlStore store, ReadOnlySpan<string> defines)
    {
        _gl = store.Gl;
        _program = new(store, "decal.vert", "level.frag", defines);
        _model = _program.Location("uModel");
        _square = VertexLayout.DecalSquare(store);
    }

    /// <summary>Draws it, seen from both sides. Leaves blending off and depth written.</summary>
    /// <param name="height">Height over the world's origin, m.</param>
    /// <param name="about">The middle of what is drawn, in G.</param>
    public void Draw(double height, Vector3 about)
    {
        _gl.Enable(EnableCap.Blend);
        _gl.DepthMask(false);
        _gl.Disable(EnableCap.CullFace);
        _program.Use();
        _program.Set(_model, Matrix4x4.CreateScale(Radius) * Matrix4x4.CreateTranslation(about with { Z = (float)height }));
        _gl.BindVertexArray(_square);
        _gl.DrawArrays(PrimitiveType.Triangles, 0, 6);
        _gl.Enable(EnableCap.CullFace);
        _gl.DepthMask(true);
        _gl.Disable(EnableCap.Blend);
    }
}
