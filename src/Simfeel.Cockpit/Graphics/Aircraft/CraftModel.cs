using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Physics;
using Simfeel.Physics.Rotors;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>One craft on the graphics card, drawn from the parts of its build.</summary>
internal sealed unsafe class CraftModel : IDisposable
{
    private readonly GlStore _store;
    private readonly CraftPrograms _programs;
    private readonly List<InstanceBatch> _parts = [];
    private readonly InstanceBatch _blades;
    private readonly Instance[] _bladeInstances;
    private readonly AssembledBuild _build;
    private readonly Livery _livery;
    private readonly int _bladeCount;
    private readonly float _solidity;
    private readonly CraftMassModel _mass;

    /// <summary>Uploads a build.</summary>
    public CraftModel(GL gl, CraftPrograms programs, AssembledBuild build, Livery livery, Quality quality)
    {
        _store = new(gl);
        _programs = programs;
        _build = build;
        _livery = livery;
        int sides = quality == Quality.Low ? 14 : 28;
        foreach ((MeshShape shape, Instance[] instances) in new CraftInstances(build, livery).All) _parts.Add(new(_store, Mesh.Of(shape, sides), instances));
        RotorGeometry geometry = build.Build.Propeller.Blades.Geometry();
        _bladeCount = geometry.Blades;
        _solidity = BladeMesh.Solidity(geometry);
        _bladeInstances = new Instance[_bladeCount * build.Craft.Rotors.Count];
        _blades = new(_store, BladeMesh.Of(geometry), _bladeInstances);
        _mass = new(_store, programs, build, sides);
        Reach = (float)ViewRig.Reach(build);
        Lamps = CraftLamps.Of(build);
    }

    /// <summary>Distance of the farthest tip from the centre of gravity, m.</summary>
    public float Reach { get; }

    /// <summary>Lamps in body axes.</summary>
    public CraftLamp[] Lamps { get; }

    /// <summary>Draws all parts but the blades.</summary>
    /// <param name="pose">Where the craft is.</param>
    /// <param name="opacity">1 solid, less translucent.</param>
    /// <param name="hollow">A translucent craft shows its inside.</param>
    public void DrawSolid(in CraftPose pose, float opacity, bool hollow = false)
    {
        Matrix4x4 model = GraphicsFrame.FromBody(pose.p_WB, pose.q_WB);
        bool through = opacity < 1;
        GL gl = _store.Gl;
        _programs.Solid.Use();
        _programs.Solid.Set(_programs.SolidModel, model);
        _programs.Solid.Set(_programs.SolidFade, new Vector4(0, 0, 0, opacity));
        if (through && !hollow)
        {
            // depth first, so that nothing of the inside shows through the outside
            gl.ColorMask(false, false, false, false);
            foreach (InstanceBatch batch in _parts) batch.DrawAll();
            gl.ColorMask(true, true, true, true);
            gl.DepthFunc(DepthFunction.Lequal);
        }
        if (through) gl.Enable(EnableCap.Blend);
        foreach (InstanceBatch batch in _parts) batch.DrawAll();
        gl.Disable(EnableCap.Blend);
        gl.DepthFunc(DepthFunction.Less);
    }

    /// <summary>Draws sharp blades and blurred discs; after everything solid, since what lies behind shows through.</summary>
    public void DrawRotors(in CraftPose pose, float opacity)
    {
        GL gl = _store.Gl;
        Matrix4x4 model = GraphicsFrame.FromBody(pose.p_WB, pose.q_WB);
        gl.Enable(EnableCap.Blend);
        gl.Disable(EnableCap.CullFace);
        _programs.Solid.Use();
        _programs.Solid.Set(_programs.SolidModel, model);
        _programs.Solid.Set(_programs.SolidFade, new Vector4(0, 0, 0, opacity));
        _blades.Draw(SetBlades(pose));
        gl.DepthMask(false);
        DrawDiscs(pose, model, opacity);
        gl.DepthMask(true);
        gl.Enable(EnableCap.CullFace);
        gl.Disable(EnableCap.Blend);
    }

    /// <summary>Draws the depth from the sun.</summary>
    /// <param name="pose">Where the craft is.</param>
    /// <param name="light">From G to the light's clip space.</param>
    public void DrawDepth(in CraftPose pose, in Matrix4x4 light)
    {
        _programs.Depth.Use();
        _programs.Depth.Set(_programs.DepthModel, GraphicsFrame.FromBody(pose.p_WB, pose.q_WB) * light);
        foreach (InstanceBatch batch in _parts) batch.DrawAll();
        _blades.Draw(SetBlades(pose));
    }

    /// <summary>Draws the mass view: spheres, arrows and axes, the craft's parts faint, the ellipsoid.</summary>
    public void DrawMass(in CraftPose pose, float opacity) => _mass.Draw(pose, this, opacity);

    /// <inheritdoc/>
    public void Dispose() => _store.Dispose();

    private void DrawDiscs(in CraftPose pose, in Matrix4x4 model, float opacity)
    {
        _programs.Disc.Use();
        _store.Gl.BindVertexArray(_programs.Square);
        for (int k = 0; k < _build.Craft.Rotors.Count; k++)
        {
            if (Struck(pose, k)) continue;
            RotorBlur blur = RotorBlur.Of(pose.RotorSpeeds[k], _bladeCount);
            if (blur.Disc <= 0) continue;
            RotorConstants rotor = _build.Craft.Rotors[k];
            Matrix4x4 place = Matrix4x4.CreateScale((float)rotor.Radius) * Matrix4x4.CreateTranslation(GraphicsFrame.Body(rotor.p_BcmR_B)) * model;
            _programs.Disc.Set(_programs.DiscModel, place);
            _programs.Disc.Set(_programs.DiscColour, new Vector4(_livery.Colour, blur.Disc * opacity * 1.5f));
            _programs.Disc.Set(_programs.DiscBlades, new Vector4((float)Math.IEEERemainder(pose.RotorAngles[k], 2 * Math.PI), _bladeCount, blur.Ghosts, _solidity));
            _store.Gl.DrawArrays(PrimitiveType.Triangles, 0, 6);
        }
    }

    /// <summary>Places the blades that can be seen as such and gives their number.</summary>
    private int SetBlades(in CraftPose pose)
    {
        int count = 0;
        for (int k = 0; k < _build.Craft.Rotors.Count; k++)
        {
            RotorConstants rotor = _build.Craft.Rotors[k];
            bool struck = Struck(pose, k);
            float opacity = struck ? 1 : RotorBlur.Of(pose.RotorSpeeds[k], _bladeCount).Blades;
            if (opacity <= 0) continue;
            float radius = (float)rotor.Radius;
            for (int b = 0; b < _bladeCount; b++)
            {
                // broken blades are of unequal lengths
                float length = struck ? radius * (0.42f + (0.16f * ((b + k) % 3))) : radius;
                float angle = (float)Math.IEEERemainder(pose.RotorAngles[k] + (2 * Math.PI * b / _bladeCount), 2 * Math.PI);
                Matrix4x4 place = Matrix4x4.CreateScale(length, radius * rotor.Spin, radius) * Matrix4x4.CreateRotationZ(angle)
                    * Matrix4x4.CreateTranslation(GraphicsFrame.Body(rotor.p_BcmR_B));
                _bladeInstances[count++] = Instance.Of(place, struck ? Livery.Broken : _livery.Colour, 0.3f).Banded(default, -opacity);
            }
        }
        return count;
    }

    private static bool Struck(in CraftPose pose, int rotor) => (pose.StruckRotors & (1 << rotor)) != 0;
}
