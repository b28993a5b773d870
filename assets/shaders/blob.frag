// A soft dark disc on the ground, or the metre grid of the reference plane.
in vec2 vAcross;
in vec2 vPosition;
uniform vec4 uFade;  // x: 0 blob, 1 grid; w strength
out vec4 oColour;

void main()
{
    float r2 = dot(vAcross, vAcross);
    float inside = max(1.0 - r2, 0.0);
    if (uFade.x < 0.5)
    {
        oColour = vec4(0.03, 0.04, 0.06, uFade.w * inside * inside);
        return;
    }
    vec2 w = max(fwidth(vPosition), vec2(1e-4));
    vec2 g = clamp(1.0 - (0.5 - abs(fract(vPosition) - 0.5)) / w, 0.0, 1.0) * min(vec2(1.0), 0.35 / w);
    oColour = vec4(1.0, 1.0, 1.0, uFade.w * inside * max(g.x, g.y));
}
