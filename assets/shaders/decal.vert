// Paint and blobs on the ground: quads with a coordinate across the paint.
layout(location = 0) in vec2 aPosition;
layout(location = 1) in vec2 aAcross;  // -1 to 1 over the quad; half width over paint's half width
uniform mat4 uModel;
out vec2 vAcross;
out vec2 vPosition;

void main()
{
    vAcross = aAcross;
    vec4 p = uModel * vec4(aPosition, 0.0, 1.0);
    vPosition = p.xy;
    gl_Position = uViewProjection * p;
}
