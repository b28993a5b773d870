using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>A field on the graphics card: land, cliffs, paint, sea, sky and all solids.</summary>
internal sealed unsafe class FieldModel
{
    private const float SeaReach = 7000;

    private readonly GL _gl;
    private readonly ShaderProgram _solid, _masonry, _land, _cliff, _mark, _sea, _sky, _depth;
    private readonly List<InstanceBatch> _plain = [], _stone = [];
    private readonly (uint Array, int Vertices) _landMesh, _cliffMesh, _markMesh, _seaMesh, _skyMesh;
    private readonly int _solidModel, _solidFade, _masonryModel, _masonryFade, _markModel, _depthModel;

    /// <summary>Waits for the textures and uploads everything.</summary>
    public FieldModel(GlStore store, FieldMap map, FieldPictures pictures, Quality quality, ReadOnlySpan<string> defines)
    {
        _gl = store.Gl;
        _solid = new(store, "solid.vert", "solid.frag", defines);
        _masonry = new(store, "solid.vert", "solid.frag", [.. defines, "MASONRY"]);
        _land = new(store, "land.vert", "land.frag", defines);
        _cliff = new(store, "cliff.vert", "cliff.frag", defines);
        _mark = new(store, "decal.vert", "mark.frag", defines);
        _sea = new(store, "sea.vert", "sea.frag", defines);
        _sky = new(store, "sky.vert", "sky.frag", defines);
        _depth = new(store, "depth.vert", "depth.frag");
        (_solidModel, _solidFade) = (_solid.Location("uModel"), _solid.Location("uFade"));
        (_masonryModel, _masonryFade) = (_masonry.Location("uModel"), _masonry.Location("uFade"));
        _markModel = _mark.Location("uModel");
        _depthModel = _depth.Location("uModel");

        LandTexture land = pictures.Land.GetAwaiter().GetResult();
        Area = new(land.Corner.X, land.Corner.Y, 1 / land.Edge, 1 / land.Edge);
        Centre = land.Corner + new Vector2(land.Edge / 2);
        Edge = land.Edge;
        SeaHeight = -(float)map.SeaDepth;
        LandColour = store.Texture(land.Size, land.Size, quality == Quality.Low ? pictures.Lit.GetAwaiter().GetResult() : land.Colour, repeat: false, mipmaps: true);
        Coast = store.Texture(land.Size / 4, land.Size / 4, land.Coast, repeat: false, mipmaps: false);
        Grain = store.Texture(GrainTextures.Size, GrainTextures.Size, pictures.Grain.GetAwaiter().GetResult(), repeat: true, mipmaps: true);
        Waves = store.Texture(GrainTextures.Size, GrainTextures.Size, pictures.Waves.GetAwaiter().GetResult(), repeat: true, mipmaps: true);
        Sky = store.Texture(SkyTexture.Width, SkyTexture.Height, pictures.Sky.GetAwaiter().GetResult(), repeat: false, mipmaps: false);
        // the panorama closes around, but does not wrap from horizon to zenith
        _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureWrapS, (int)GLEnum.Repeat);

        Vector2[] corners = [.. map.Land.Select(LandTexture.Plan)];
        List<ushort> triangles = Polygon.Triangles(corners);
        _landMesh = (Array(store, [.. corners.SelectMany(c => (float[])[c.X, c.Y])], 2), triangles.Count);
        // the land's array is still bound and keeps the indices
        store.Buffer<ushort>(BufferTargetARB.ElementArrayBuffer, triangles.ToArray());
        _cliffMesh = Mesh(store, CliffMesh.Of(corners, (float)map.SeaDepth), 3, 3, 4);
        _markMesh = Mesh(store, MarkMesh.Of(map.Marks), 2, 2);
        _seaMesh = Mesh(store, [-SeaReach, -SeaReach, SeaReach, -SeaReach, SeaReach, SeaReach, -SeaReach, -SeaReach, SeaReach, SeaReach, -SeaReach, SeaReach], 2);
        _skyMesh = Mesh(store, Dome(), 3, 2);
        foreach ((MeshShape shape, bool masonry, Instance[] instances) in new SolidInstances(map).All)
        {
            int sides = shape is MeshShape.Crown ? (quality == Quality.Low ? 9 : 16) : quality == Quality.Low ? 12 : 28;
            if (shape == MeshShape.Tower && quality == Quality.Low) sides = 20;
            (masonry ? _stone : _plain).Add(new(store, Meshes.Mesh.Of(shape, sides), instances));
        }
    }

    /// <summary>Corner of the field's textures and one over their edge.</summary>
    public Vector4 Area { get; }

    /// <summary>Middle of the field's textures in G, m.</summary>
    public Vector2 Centre { get; }

    /// <summary>Edge of the field's textures, m.</summary>
    public float Edge { get; }

    /// <summary>Height of the sea in G, m.</summary>
    public float SeaHeight { get; }

    /// <summary>Textures, for their units.</summary>
    public uint LandColour { get; }

    /// <inheritdoc cref="LandColour"/>
    public uint Coast { get; }

    /// <inheritdoc cref="LandColour"/>
    public uint Grain { get; }

    /// <inheritdoc cref="LandColour"/>
    public uint Waves { get; }

    /// <inheritdoc cref="LandColour"/>
    public uint Sky { get; }

    /// <summary>Draws the solids.</summary>
    public void DrawSolids(ReadOnlySpan<Vector4> planes)
    {
        _solid.Use();
        _solid.Set(_solidModel, Matrix4x4.Identity);
        _solid.Set(_solidFade, Vector4.UnitW);
        foreach (InstanceBatch batch in _plain) batch.DrawSeen(planes);
        _masonry.Use();
        _masonry.Set(_masonryModel, Matrix4x4.Identity);
        _masonry.Set(_masonryFade, Vector4.UnitW);
        foreach (InstanceBatch batch in _stone) batch.DrawSeen(planes);
    }

    /// <summary>Draws land, cliffs, sea and sky, from near to far, then the paint.</summary>
    public void DrawGround()
    {
        _land.Use();
        _gl.BindVertexArray(_landMesh.Array);
        _gl.DrawElements(PrimitiveType.Triangles, (uint)_landMesh.Vertices, DrawElementsType.UnsignedShort, null);
        _cliff.Use();
        Draw(_cliffMesh);
        _sea.Use();
        Draw(_seaMesh);
        _sky.Use();
        // the dome is seen from inside, paint from both sides
        _gl.Disable(EnableCap.CullFace);
        _gl.DepthFunc(DepthFunction.Lequal);
        Draw(_skyMesh);
        _gl.Enable(EnableCap.PolygonOffsetFill);
        _gl.PolygonOffset(-1, -2);
        _gl.Enable(EnableCap.Blend);
        _gl.DepthMask(false);
        _mark.Use();
        _mark.Set(_markModel, Matrix4x4.Identity);
        Draw(_markMesh);
        _gl.DepthMask(true);
        _gl.Disable(EnableCap.Blend);
        _gl.Disable(EnableCap.PolygonOffsetFill);
        _gl.DepthFunc(DepthFunction.Less);
        _gl.Enable(EnableCap.CullFace);
    }

    /// <summary>Draws the depth of all solids from the sun.</summary>
    /// <param name="light">From G to the light's clip space.</param>
    public void DrawDepth(in Matrix4x4 light)
    {
        _depth.Use();
        _depth.Set(_depthModel, light);
        foreach (InstanceBatch batch in _plain) batch.DrawSeen(default);
        foreach (InstanceBatch batch in _stone) batch.DrawSeen(default);
    }

    private void Draw((uint Array, int Vertices) mesh)
    {
        if (mesh.Vertices == 0) return;
        _gl.BindVertexArray(mesh.Array);
        _gl.DrawArrays(PrimitiveType.Triangles, 0, (uint)mesh.Vertices);
    }

    private static float[] Dome()
    {
        const int around = 48, rows = 12;
        List<float> vertices = [];
        for (int i = 0; i < around; i++)
        {
            // a skirt below the horizon shows what stands right on it
            for (int row = -1; row < rows; row++)
            {
                Put(i, row);
                Put(i + 1, row);
                Put(i + 1, row + 1);
                Put(i, row);
                Put(i + 1, row + 1);
                Put(i, row + 1);
            }
        }
        return [.. vertices];

        void Put(int i, int row)
        {
            float azimuth = 2 * MathF.PI * i / around, share = (float)row / rows, sine = row < 0 ? -0.05f : share * share;
            float level = MathF.Sqrt(1 - (sine * sine));
            vertices.AddRange([level * MathF.Cos(azimuth), level * MathF.Sin(azimuth), sine, (float)i / around, row < 0 ? 0.5f / SkyTexture.Height : SkyTexture.Row(sine)]);
        }
    }

    private static (uint Array, int Vertices) Mesh(GlStore store, float[] vertices, params ReadOnlySpan<int> sizes)
    {
        int floats = 0;
        foreach (int size in sizes) floats += size;
        return (Array(store, vertices, sizes), vertices.Length / floats);
    }

    private static uint Array(GlStore store, float[] vertices, params ReadOnlySpan<int> sizes) => VertexLayout.Array(store, vertices, sizes);
}
