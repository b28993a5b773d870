using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Graphics;

/// <summary>What helps to judge the height of a craft: a soft blob under it, a plumb line with metres and a metre grid.</summary>
internal sealed class GroundAids
{
    private readonly GL _gl;
    private readonly ShaderProgram _blob;
    private readonly CraftPrograms _programs;
    private readonly InstanceBatch _line;
    private readonly Instance[] _lines = new Instance[1];
    private readonly Vector2[] _land;
    private readonly uint _square;
    private readonly int _model, _fade;
    private readonly float _sea;

    /// <summary>Makes them for a field.</summary>
    public GroundAids(GlStore store, FieldMap map, CraftPrograms programs, ReadOnlySpan<string> defines)
    {
        _gl = store.Gl;
        _programs = programs;
        _blob = new(store, "decal.vert", "blob.frag", defines);
        (_model, _fade) = (_blob.Location("uModel"), _blob.Location("uFade"));
        _square = VertexLayout.DecalSquare(store);
        _line = new(store, Mesh.Of(MeshShape.Cylinder, 8), _lines);
        _land = [.. map.Land.Select(LandTexture.Plan)];
        _sea = -(float)map.SeaDepth;
    }

    /// <summary>Draws a blob that widens and pales with height. Blending is on, depth is not written.</summary>
    public void DrawBlob(CraftModel craft, in CraftPose pose)
    {
        Vector3 p = GraphicsFrame.Of(pose.p_WB);
        float ground = GroundUnder(p), height = MathF.Max(0, p.Z - ground), radius = (1.15f * craft.Reach) + (0.10f * height);
        float strength = pose.Opacity * 0.62f * craft.Reach * craft.Reach / (radius * radius) * 1.6f;
        Disc(p, ground, radius, new(0, 0, 0, MathF.Min(0.6f, MathF.Max(strength, 0.10f * pose.Opacity))));
    }

    /// <summary>Draws the metre grid about the foot of a craft. Blending is on, depth is not written.</summary>
    public void DrawGrid(in CraftPose pose)
    {
        Vector3 p = GraphicsFrame.Of(pose.p_WB);
        Disc(p, GroundUnder(p), 7, new(1, 0, 0, 0.55f * pose.Opacity));
    }

    /// <summary>Draws the plumb line: dark and light metres counted from the ground.</summary>
    public void DrawPlumb(in CraftPose pose)
    {
        Vector3 p = GraphicsFrame.Of(pose.p_WB);
        float ground = GroundUnder(p), height = p.Z - ground;
        if (height < 0.1f) return;
        // its middle is on the ground, where the bands count from
        Matrix4x4 place = Matrix4x4.CreateScale(0.005f, 0.005f, 2 * height) * Matrix4x4.CreateTranslation(p with { Z = ground });
        _lines[0] = Instance.Of(place, LinearColour.Of(0xF4F7FA)).Banded(LinearColour.Of(0x2B3440), 2);
        _programs.Solid.Use();
        _programs.Solid.Set(_programs.SolidModel, Matrix4x4.Identity);
        _programs.Solid.Set(_programs.SolidFade, Vector4.UnitW);
        _line.Draw(1);
    }

    private void Disc(Vector3 p, float ground, float radius, Vector4 fade)
    {
        _blob.Use();
        _blob.Set(_model, Matrix4x4.CreateScale(radius) * Matrix4x4.CreateTranslation(p with { Z = ground }));
        _blob.Set(_fade, fade);
        _gl.BindVertexArray(_square);
        _gl.DrawArrays(PrimitiveType.Triangles, 0, 6);
    }

    private float GroundUnder(Vector3 p) => Polygon.Contains(_land, new(p.X, p.Y)) ? 0 : _sea;
}
