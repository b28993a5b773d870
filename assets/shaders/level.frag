// The level grid: lines at whole metres of the world, bold ones every five, over a pale tint; it fades towards its rim.
in vec2 vAcross;
in vec2 vPosition;
out vec4 oColour;

// How much of a pixel a line of this half width (pixels) covers; lines closer than some pixels pale instead of flickering.
float lines(vec2 p, float halfWidth)
{
    vec2 w = max(fwidth(p), vec2(1e-5));
    vec2 away = (0.5 - abs(fract(p) - 0.5)) / w;
    vec2 g = clamp(halfWidth + 0.5 - away, 0.0, 1.0) * min(vec2(1.0), 0.25 / w);
    return max(g.x, g.y);
}

void main()
{
    float inside = clamp(2.0 * (1.0 - length(vAcross)), 0.0, 1.0);
    float line = max(0.55 * lines(vPosition, 0.6), 0.95 * lines(vPosition / 5.0, 1.4));
    // dark lines are seen against the sky, the pale tint under them against grass and sea
    vec3 c = mix(vec3(0.93, 0.96, 1.0), vec3(0.07, 0.10, 0.33), clamp(1.6 * line, 0.0, 1.0));
    oColour = vec4(c, inside * mix(0.24, 0.92, line));
}
