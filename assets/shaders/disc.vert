// A rotor as a disc: a square of one radius about the hub in the plane of the blades.
layout(location = 0) in vec2 aPosition;
uniform mat4 uModel;
out vec2 vPlace;
out vec3 vPosition;

void main()
{
    vPlace = aPosition;
    vec4 p = uModel * vec4(aPosition, 0.0, 1.0);
    vPosition = p.xyz;
    gl_Position = uViewProjection * p;
}
