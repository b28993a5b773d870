using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>Makes OpenGL objects and deletes all of them together.</summary>
internal sealed unsafe class GlStore(GL gl) : IDisposable
{
    private readonly List<uint> _buffers = [], _arrays = [], _textures = [], _framebuffers = [], _renderbuffers = [], _programs = [];

    /// <summary>The functions of OpenGL.</summary>
    public GL Gl => gl;

    /// <summary>A buffer with data that stays.</summary>
    public uint Buffer<T>(BufferTargetARB target, ReadOnlySpan<T> data)
        where T : unmanaged
    {
        uint buffer = Buffer();
        gl.BindBuffer(target, buffer);
        fixed (T* first = data) gl.BufferData(target, (nuint)(data.Length * sizeof(T)), first, BufferUsageARB.StaticDraw);
        return buffer;
    }

    /// <summary>A buffer of a size in bytes that is written anew for every picture.</summary>
    public uint Stream(BufferTargetARB target, int size)
    {
        uint buffer = Buffer();
        gl.BindBuffer(target, buffer);
        gl.BufferData(target, (nuint)size, null, BufferUsageARB.StreamDraw);
        return buffer;
    }

    /// <summary>A vertex array.</summary>
    public uint VertexArray() => Kept(_arrays, gl.GenVertexArray());

    /// <summary>
    /// A texture of RGBA bytes and, on request, smaller copies. One format for all: the software renderer samples it by a
    /// faster way than others.
    /// </summary>
    public uint Texture(int width, int height, ReadOnlySpan<byte> pixels, bool repeat, bool mipmaps) =>
        Texture(width, height, InternalFormat.Rgba8, PixelFormat.Rgba, PixelType.UnsignedByte, pixels, repeat, mipmaps);

    /// <summary>A texture of any format.</summary>
    public uint Texture(int width, int height, InternalFormat kept, PixelFormat format, PixelType type, ReadOnlySpan<byte> pixels, bool repeat, bool mipmaps)
    {
        uint texture = Kept(_textures, gl.GenTexture());
        gl.BindTexture(TextureTarget.Texture2D, texture);
        gl.PixelStore(PixelStoreParameter.UnpackAlignment, 1);
        gl.PixelStore(PixelStoreParameter.UnpackRowLength, 0);
        gl.BindBuffer(BufferTargetARB.PixelUnpackBuffer, 0);
        fixed (byte* first = pixels) gl.TexImage2D(TextureTarget.Texture2D, 0, kept, (uint)width, (uint)height, 0, format, type, first);
        int wrap = (int)(repeat ? GLEnum.Repeat : GLEnum.ClampToEdge);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureWrapS, wrap);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureWrapT, wrap);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMagFilter, (int)GLEnum.Linear);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter, (int)(mipmaps ? GLEnum.LinearMipmapNearest : GLEnum.Linear));
        if (mipmaps) gl.GenerateMipmap(TextureTarget.Texture2D);
        return texture;
    }

    /// <summary>A framebuffer.</summary>
    public uint Framebuffer() => Kept(_framebuffers, gl.GenFramebuffer());

    /// <summary>A renderbuffer.</summary>
    public uint Renderbuffer() => Kept(_renderbuffers, gl.GenRenderbuffer());

    /// <summary>Takes over a program.</summary>
    public uint Program(uint program) => Kept(_programs, program);

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (uint id in _programs) gl.DeleteProgram(id);
        foreach (uint id in _arrays) gl.DeleteVertexArray(id);
        foreach (uint id in _buffers) gl.DeleteBuffer(id);
        foreach (uint id in _framebuffers) gl.DeleteFramebuffer(id);
        foreach (uint id in _renderbuffers) gl.DeleteRenderbuffer(id);
        foreach (uint id in _textures) gl.DeleteTexture(id);
        foreach (List<uint> ids in (ReadOnlySpan<List<uint>>)[_programs, _arrays, _buffers, _framebuffers, _renderbuffers, _textures]) ids.Clear();
    }

    private uint Buffer() => Kept(_buffers, gl.GenBuffer());

    private static uint Kept(List<uint> ids, uint id)
    {
        ids.Add(id);
        return id;
    }
}
