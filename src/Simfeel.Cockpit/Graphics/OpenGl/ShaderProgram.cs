using System.Numerics;
using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>
/// A program out of the embedded GLSL files: <c>common.glsl</c> before both stages, then <c>NAME.vert</c> and
/// <c>NAME.frag</c>. All programs share the uniform block <c>Frame</c> and the texture units of <see cref="TextureSlot"/>.
/// </summary>
internal sealed unsafe class ShaderProgram
{
    private readonly GL _gl;
    private readonly uint _program;

    /// <summary>Compiles and links.</summary>
    /// <param name="store">Owner of the program.</param>
    /// <param name="vertex">File name of the vertex stage.</param>
    /// <param name="fragment">File name of the fragment stage.</param>
    /// <param name="defines">Words to define, such as SHADOWS.</param>
    /// <exception cref="InvalidOperationException">The driver does not take a shader; the message has its log.</exception>
    public ShaderProgram(GlStore store, string vertex, string fragment, params ReadOnlySpan<string> defines)
    {
        _gl = store.Gl;
        string head = "#version 330 core\n";
        foreach (string define in defines) head += $"#define {define}\n";
        head += Daylight.Glsl + Source("common.glsl");
        _program = store.Program(_gl.CreateProgram());
        uint v = Compile(ShaderType.VertexShader, vertex, head);
        uint f = Compile(ShaderType.FragmentShader, fragment, head);
        _gl.LinkProgram(_program);
        _gl.DeleteShader(v);
        _gl.DeleteShader(f);
        if (_gl.GetProgram(_program, ProgramPropertyARB.LinkStatus) == 0)
            throw new InvalidOperationException($"{vertex} and {fragment} do not link: {_gl.GetProgramInfoLog(_program)}");
        uint block = _gl.GetUniformBlockIndex(_program, "Frame");
        if (block != uint.MaxValue) _gl.UniformBlockBinding(_program, block, 0);
        Use();
        foreach (TextureSlot slot in Enum.GetValues<TextureSlot>())
        {
            int at = Location("u" + slot);
            if (at >= 0) _gl.Uniform1(at, (int)slot);
        }
    }

    /// <summary>Draws with this program from here on.</summary>
    public void Use() => _gl.UseProgram(_program);

    /// <summary>Where a uniform is; -1 where the shader has none.</summary>
    public int Location(string name) => _gl.GetUniformLocation(_program, name);

    /// <summary>Sets a matrix of the program in use.</summary>
    public void Set(int location, in Matrix4x4 value)
    {
        fixed (Matrix4x4* first = &value) _gl.UniformMatrix4(location, 1, false, (float*)first);
    }

    /// <summary>Sets a vector of the program in use.</summary>
    public void Set(int location, in Vector4 value) => _gl.Uniform4(location, value.X, value.Y, value.Z, value.W);

    private uint Compile(ShaderType type, string file, string head)
    {
        uint shader = _gl.CreateShader(type);
        _gl.ShaderSource(shader, head + "#line 1\n" + Source(file));
        _gl.CompileShader(shader);
        if (_gl.GetShader(shader, ShaderParameterName.CompileStatus) == 0)
            throw new InvalidOperationException($"{file} does not compile: {_gl.GetShaderInfoLog(shader)}");
        _gl.AttachShader(_program, shader);
        return shader;
    }

    private static string Source(string file)
    {
        using Stream stream = typeof(ShaderProgram).Assembly.GetManifestResourceStream("shaders/" + file)
            ?? throw new InvalidOperationException($"The shader {file} is not in the program.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
