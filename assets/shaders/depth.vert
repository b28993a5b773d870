// Depth from the sun.
layout(location = 0) in vec3 aPosition;
layout(location = 2) in vec4 aRow0;
layout(location = 3) in vec4 aRow1;
layout(location = 4) in vec4 aRow2;
uniform mat4 uModel;  // to the light's clip space

void main()
{
    vec4 p = vec4(aPosition, 1.0);
    gl_Position = uModel * vec4(dot(aRow0, p), dot(aRow1, p), dot(aRow2, p), 1.0);
}
