// Calm water: two drifting sets of waves, the sky by Schlick's reflectance, shallows and foam by distance from the coast.
// Worked out in encoded values, which is cheap and close enough for colours without shading.
in vec2 vPosition;
uniform sampler2D uWaves;
uniform sampler2D uCoast;
out vec4 oColour;

void main()
{
    float depth = 1.0 / gl_FragCoord.w;
    float t = uEye.w;
    vec2 slope = texture(uWaves, vPosition * 0.047 + vec2(0.009, 0.006) * t).rg - 0.5;
    slope += texture(uWaves, vPosition.yx * 0.0083 + vec2(-0.002, 0.003) * t).ba - 0.5;
    float coast = texture(uCoast, (vPosition - uArea.xy) * uArea.zw).r;
    vec3 d = uEye.xyz - vec3(vPosition, uSun.w);
    vec3 v = d * inversesqrt(dot(d, d));
    // far waves are many in a pixel and level out
    vec2 n = slope * (0.6 / (1.0 + 0.006 * depth));
    float m = 1.0 - clamp(dot(n, v.xy) + v.z, 0.0, 1.0);
    float m2 = m * m;
    vec3 deep = mix(vec3(0.125, 0.330, 0.400), vec3(0.30, 0.56, 0.58), coast * coast);
    vec3 sky = mix(vec3(0.60, 0.73, 0.85), HazeEncoded, m2);
    vec3 c = mix(deep, sky, 0.05 + 0.85 * m2 * m2);
    // the sun in the waves: where the half vector is level with them
    vec3 h = v + uSun.xyz;
    vec2 off = h.xy / h.z - n;
    c += vec3(1.0, 0.92, 0.74) * (0.75 * exp2(-90.0 * dot(off, off)));
    float foam = clamp((coast + 0.30 * slope.x - 0.86) * 7.0, 0.0, 1.0);
    c = mix(c, vec3(0.90, 0.92, 0.91), 0.75 * foam);
    oColour = vec4(hazedEncoded(c, depth), 1.0);
}
