// Blades blurred by their motion: how much of a turn each point is covered, with ghosts of the blades at lower speed.
in vec2 vPlace;
in vec3 vPosition;
uniform vec4 uColour;  // linear; w opacity
uniform vec4 uBlades;  // angle of the first blade, number of blades, ghosts 0 to 1, solidity at 0.75 radius
out vec4 oColour;

void main()
{
    float r2 = dot(vPlace, vPlace);
    float r = sqrt(r2);
    float edge = clamp((1.0 - r) / max(fwidth(r), 1e-4), 0.0, 1.0) * smoothstep(0.08, 0.14, r);
    // a blade as wide everywhere covers less of a larger circle
    float cover = uBlades.w * 0.75 / max(r, 0.2) * (1.0 - 0.45 * smoothstep(0.7, 1.0, r));
    float phase = uBlades.y * (atan(vPlace.y, vPlace.x) - uBlades.x);
    float ghost = 1.0 + uBlades.z * cos(phase);
    float rim = smoothstep(0.90, 0.965, r) * 0.35;
    // close before the lens they are out of focus
    float near = clamp(distance(uEye.xyz, vPosition) * 2.5, 0.2, 1.0);
    float alpha = near * edge * (cover * ghost + rim) * uColour.w;
    vec3 c = uColour.rgb * (SkyLight + SunLight * 0.5);
    oColour = vec4(encode(hazed(c, 1.0 / gl_FragCoord.w)), clamp(alpha, 0.0, 0.9));
}
