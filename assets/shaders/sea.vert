layout(location = 0) in vec2 aPosition;
out vec2 vPosition;

void main()
{
    vPosition = uEye.xy + aPosition;
    gl_Position = uViewProjection * vec4(vPosition, uSun.w, 1.0);
}
