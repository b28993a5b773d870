using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Drawing;

/// <summary>Lays a texture with premultiplied alpha over a whole framebuffer.</summary>
internal sealed class LayerQuad : IDisposable
{
    private const string Vertex = """
        #version 330 core
        out vec2 place;
        void main()
        {
            place = vec2(gl_VertexID & 1, gl_VertexID >> 1);
            gl_Position = vec4(2.0 * place - 1.0, 0.0, 1.0);
        }
        """;

    private const string Fragment = """
        #version 330 core
        uniform sampler2D layer;
        in vec2 place;
        out vec4 colour;
        void main() { colour = texture(layer, place); }
        """;

    private readonly GL _gl;
    private readonly uint _program;
    private readonly uint _vertices;

    public LayerQuad(GL gl)
    {
        _gl = gl;
        uint vertex = Compile(ShaderType.VertexShader, Vertex);
        uint fragment = Compile(ShaderType.FragmentShader, Fragment);
        _program = gl.CreateProgram();
        gl.AttachShader(_program, vertex);
        gl.AttachShader(_program, fragment);
        gl.LinkProgram(_program);
        gl.DeleteShader(vertex);
        gl.DeleteShader(fragment);
        if (gl.GetProgram(_program, ProgramPropertyARB.LinkStatus) == 0)
            throw new InvalidOperationException("The overlay's shader does not link: " + gl.GetProgramInfoLog(_program));
        // the sampler stays at its default, texture unit 0
        _vertices = gl.GenVertexArray();
    }

    public void Draw(uint texture, uint framebuffer, int width, int height)
    {
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, framebuffer);
        _gl.Viewport(0, 0, (uint)width, (uint)height);
        _gl.Disable(EnableCap.DepthTest);
        _gl.Disable(EnableCap.StencilTest);
        _gl.Disable(EnableCap.ScissorTest);
        _gl.Disable(EnableCap.CullFace);
        _gl.ColorMask(true, true, true, true);
        _gl.Enable(EnableCap.Blend);
        _gl.BlendEquation(BlendEquationModeEXT.FuncAdd);
        _gl.BlendFunc(BlendingFactor.One, BlendingFactor.OneMinusSrcAlpha);
        _gl.UseProgram(_program);
        _gl.ActiveTexture(TextureUnit.Texture0);
        _gl.BindSampler(0, 0);
        _gl.BindTexture(TextureTarget.Texture2D, texture);
        _gl.BindVertexArray(_vertices);
        _gl.DrawArrays(PrimitiveType.TriangleStrip, 0, 4);
        _gl.Disable(EnableCap.Blend);
        _gl.BindVertexArray(0);
    }

    public void Dispose()
    {
        _gl.DeleteVertexArray(_vertices);
        _gl.DeleteProgram(_program);
    }

    private uint Compile(ShaderType type, string source)
    {
        uint shader = _gl.CreateShader(type);
        _gl.ShaderSource(shader, source);
        _gl.CompileShader(shader);
        if (_gl.GetShader(shader, ShaderParameterName.CompileStatus) == 0)
            throw new InvalidOperationException("The overlay's shader does not compile: " + _gl.GetShaderInfoLog(shader));
        return shader;
    }
}
