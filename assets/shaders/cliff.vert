layout(location = 0) in vec3 aPosition;
layout(location = 1) in vec3 aNormal;
layout(location = 2) in vec4 aColour;
out vec3 vPosition;
flat out vec3 vNormal;
out vec4 vColour;

void main()
{
    vPosition = aPosition;
    vNormal = aNormal;
    vColour = aColour;
    gl_Position = uViewProjection * vec4(aPosition, 1.0);
}
