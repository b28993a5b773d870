// Grass and gravel: colour over the whole field, patches of metres, blades and pebbles of millimetres.
in vec2 vPosition;
uniform sampler2D uLandColour;
uniform sampler2D uGrain;
out vec4 oColour;

void main()
{
    vec4 land = texture(uLandColour, (vPosition - uArea.xy) * uArea.zw);
    // smaller copies of the grain than the hardware would take: sharper, and it swims less than it gains
    vec4 fine = texture(uGrain, vPosition * 0.71, -0.9);
#ifdef SHADOWS
    vec4 patches = texture(uGrain, vPosition.yx * 0.103, -0.9);
    float stony = clamp((land.r - land.g) * 9.0 + 0.75, 0.0, 1.0);
    vec4 middle = texture(uGrain, vPosition * vec2(0.19, -0.19), -0.5);
    float grain = 0.7 * mix(fine.r, fine.b, stony) + 0.3 * mix(middle.g, middle.b, stony);
    vec3 albedo = land.rgb * land.rgb * (0.30 + 1.4 * grain) * (0.78 + 0.44 * patches.g);
    albedo.r *= 0.90 + 0.20 * patches.a;
    float sun = uSun.z * sunlit(vec3(vPosition, 0.0), vec3(0.0, 0.0, 1.0));
    vec3 c = albedo * (SkyLight + SunLight * sun);
    oColour = vec4(encode(hazed(c, 1.0 / gl_FragCoord.w)), 1.0);
#else
    // already lit and encoded: factors are about the square roots of those above
    float stony = clamp((land.r - land.g) * 7.0 + 0.75, 0.0, 1.0);
    float grain = 0.50 + 0.74 * mix(fine.r, fine.b, stony) + 0.26 * fine.g;
    oColour = vec4(hazedEncoded(land.rgb * grain, 1.0 / gl_FragCoord.w), 1.0);
#endif
}
