in vec2 vPlace;
flat in vec4 vColour;
out vec4 oColour;

void main()
{
    float r2 = dot(vPlace, vPlace);
    float f = max(1.0 - r2, 0.0);
    float core = smoothstep(0.86, 0.96, f);
    oColour = vec4(mix(vColour.rgb, vec3(1.0), 0.75 * core), vColour.w * max(core, 0.7 * f * f));
}
