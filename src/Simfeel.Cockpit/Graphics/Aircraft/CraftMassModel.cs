using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Cockpit.Overlay;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>The mass view of one craft on the graphics card.</summary>
internal sealed class CraftMassModel
{
    // The frame is only hinted at, so that the spheres inside it are seen.
    private const float FaintParts = 0.30f;

    // The axis that points down is shorter, so that the weight's arrow below it is seen.
    private const float DownShare = 0.6f;

    private readonly GL _gl;
    private readonly CraftPrograms _programs;
    private readonly AssembledBuild _build;
    private readonly InstanceBatch _spheres, _ellipsoid, _axes, _shafts, _heads;
    private readonly Instance[] _shaftInstances, _headInstances;
    private readonly float _reach;

    /// <summary>Uploads what does not change.</summary>
    public CraftMassModel(GlStore store, CraftPrograms programs, AssembledBuild build, int sides)
    {
        _gl = store.Gl;
        _programs = programs;
        _build = build;
        _spheres = new(store, Mesh.Of(MeshShape.Ball, sides), MassInstances.Spheres(build));
        _ellipsoid = new(store, Mesh.Of(MeshShape.Ball, 40), [MassInstances.Ellipsoid(build.Craft)]);
        _reach = (float)ViewRig.Reach(build);
        _axes = new(store, Mesh.Of(MeshShape.Cylinder, 12), Rings(_reach));
        int arrows = build.Craft.Rotors.Count + 4;
        _shaftInstances = new Instance[arrows];
        _headInstances = new Instance[arrows];
        _shafts = new(store, Mesh.Of(MeshShape.Cylinder, 12), _shaftInstances);
        _heads = new(store, Mesh.Of(MeshShape.Cone, 16), _headInstances);
    }

    /// <summary>Draws it about a craft.</summary>
    public void Draw(in CraftPose pose, CraftModel craft, float opacity)
    {
        Matrix4x4 model = GraphicsFrame.FromBody(pose.p_WB, pose.q_WB);
        int arrows = SetArrows(pose);
        _programs.Solid.Use();
        _programs.Solid.Set(_programs.SolidModel, model);
        _programs.Solid.Set(_programs.SolidFade, new Vector4(0, 0, 0, opacity));
        bool through = opacity < 1;
        if (through) _gl.Enable(EnableCap.Blend);
        _spheres.DrawAll();
        _axes.DrawAll();
        _shafts.Draw(arrows);
        _heads.Draw(arrows);
        if (through) _gl.Disable(EnableCap.Blend);

        // neither the faint parts nor the ellipsoid hide anything
        _gl.DepthMask(false);
        craft.DrawSolid(pose, FaintParts * opacity, hollow: true);
        _gl.Enable(EnableCap.Blend);
        _programs.Ellipsoid.Use();
        _programs.Ellipsoid.Set(_programs.EllipsoidModel, model);
        _programs.Ellipsoid.Set(_programs.EllipsoidFade, new Vector4(0, 0, 0, opacity));
        _ellipsoid.DrawAll();
        _gl.Disable(EnableCap.Blend);
        _gl.DepthMask(true);
    }

    /// <summary>Body axes, thrust of each rotor and the weight; gives their number.</summary>
    private int SetArrows(in CraftPose pose)
    {
        float thick = 0.013f * _reach / 0.17f, axis = AxisLength(_reach);
        int count = 0;
        Put(Vector3.Zero, Vector3.UnitX, axis, 0.7f * thick, AxisColour(0));
        Put(Vector3.Zero, Vector3.UnitY, axis, 0.7f * thick, AxisColour(1));
        Put(Vector3.Zero, Vector3.UnitZ, DownShare * axis, 0.7f * thick, AxisColour(2));
        double weight = _build.Craft.Mass * StandardAtmosphere.StandardGravity;
        Vector3 down = GraphicsFrame.Body(pose.q_WB.Conjugate.Rotate(Vec3.UnitZ));
        // below the body's z axis, which it would cover in level flight
        Put(0.64f * axis * down, down, (float)MassInstances.ArrowOfWeight, thick, MassInstances.Weight);
        for (int k = 0; k < _build.Craft.Rotors.Count; k++)
        {
            double share = pose.Thrust[k] / weight;
            float length = (float)(MassInstances.ArrowOfWeight * Math.Abs(share));
            if (length > 0.002f) Put(GraphicsFrame.Body(_build.Craft.Rotors[k].p_BcmR_B), Math.Sign(share) * -Vector3.UnitZ, length, 0.8f * thick, MassInstances.Thrust);
        }
        return count;

        void Put(Vector3 from, Vector3 direction, float length, float thickness, Vector3 colour) =>
            (_shaftInstances[count], _headInstances[count++]) = MassInstances.Arrow(from, direction, length, thickness, colour);
    }

    /// <summary>Axes are told apart by rings as well: x has one, y two, z three.</summary>
    private static Instance[] Rings(float reach)
    {
        List<Instance> rings = [];
        float length = AxisLength(reach), thick = 0.018f * reach / 0.17f;
        for (int axis = 0; axis < 3; axis++)
        {
            Matrix4x4 turn = axis switch
            {
                0 => Matrix4x4.CreateRotationY(MathF.PI / 2),
                1 => Matrix4x4.CreateRotationX(-MathF.PI / 2),
                _ => Matrix4x4.Identity,
            };
            for (int k = 0; k <= axis; k++)
            {
                float along = ((axis == 2 ? DownShare : 1) * length) - (thick * (3.4f + (1.1f * k)));
                rings.Add(Instance.Of(Matrix4x4.CreateScale(thick, thick, 0.4f * thick) * Matrix4x4.CreateTranslation(0, 0, along) * turn, AxisColour(axis)));
            }
        }
        return [.. rings];
    }

    /// <summary>Tip of a body axis (0 ahead, 1 right, 2 down) from the centre of gravity, body axes, m.</summary>
    public static Vec3 Tip(int axis, AssembledBuild build)
    {
        double length = AxisLength((float)ViewRig.Reach(build));
        return axis switch { 0 => new(length, 0, 0), 1 => new(0, length, 0), _ => new(0, 0, DownShare * length) };
    }

    private static float AxisLength(float reach) => 1.25f * reach;

    private static Vector3 AxisColour(int axis) => LinearColour.Of(AxisLabels.Colour(axis));
}
