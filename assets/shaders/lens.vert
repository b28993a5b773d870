layout(location = 0) in vec2 aPosition;
layout(location = 1) in vec2 aPlace;
out vec2 vPlace;

void main()
{
    vPlace = aPlace;
    gl_Position = vec4(aPosition, 0.0, 1.0);
}
