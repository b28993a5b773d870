// A dome about the eye, behind everything.
layout(location = 0) in vec3 aPosition;
layout(location = 1) in vec2 aPlace;
out vec2 vPlace;

void main()
{
    vPlace = aPlace;
    gl_Position = (uViewProjection * vec4(uEye.xyz + 900.0 * aPosition, 1.0)).xyww;
}
