in vec3 vPosition;
in vec3 vNormal;
in vec3 vLocal;
flat in vec3 vLocalNormal;
flat in vec4 vColour;
flat in vec4 vSecond;
uniform vec4 uFade;  // w: opacity
#ifdef MASONRY
uniform sampler2D uGrain;
#endif
#ifdef ELLIPSOID
in vec3 vUnit;
#endif
out vec4 oColour;

void main()
{
    vec3 n = normalize(vNormal);
    vec3 albedo = vColour.rgb;
#ifdef MASONRY
    // courses of stones of two sizes; joints and stones fade to their mean far away
    vec2 q = abs(vLocalNormal.z) > 0.5 ? vLocal.xy : vec2(abs(vLocalNormal.x) > 0.5 ? vLocal.y : vLocal.x, vLocal.z);
    q /= vec2(2.1 * vSecond.w, vSecond.w);
    float row = floor(q.y);
    q.x += 0.37 * row + 0.21 * sin(3.7 * row);
    vec2 stone = vec2(floor(q.x), row), f = fract(q);
    float near = 1.0 - smoothstep(0.15, 0.6, max(fwidth(q.x), fwidth(q.y)));
    float tone = fract(sin(dot(stone, vec2(12.9898, 78.233))) * 43758.5453);
    vec2 edge = min(f, 1.0 - f) * vec2(2.1, 1.0);
    float joint = 1.0 - smoothstep(0.03, 0.11, min(edge.x, edge.y));
    float grain = texture(uGrain, vLocal.xz * 0.45 + vLocal.yy * 0.31).b;
    albedo *= 1.0 + near * ((tone - 0.5) * 0.42) + (grain - 0.5) * 0.5;
    albedo = mix(albedo, vSecond.rgb, joint * near * 0.75);
#else
    if (vSecond.w > 0.0)
    {
        float t = vLocal.z / vSecond.w;
        float w = max(fwidth(t), 1e-4);
        float band = clamp((abs(fract(t) - 0.5) - 0.25) / w + 0.5, 0.0, 1.0);
        albedo = mix(albedo, vSecond.rgb, mix(band, 0.5, smoothstep(0.3, 0.9, w)));
    }
#endif
    float sun = max(dot(n, uSun.xyz), 0.0);
#ifdef SHADOWS
    sun *= sunlit(vPosition, n);
#endif
    vec3 light = ambient(n.z) + SunLight * sun;
    vec3 c = albedo * light;
    if (vColour.w > 0.0)
    {
        vec3 v = normalize(uEye.xyz - vPosition);
        float spec = max(dot(n, normalize(v + uSun.xyz)), 0.0);
        spec *= spec; spec *= spec; spec *= spec; spec *= spec;
        float rim = 1.0 - max(dot(n, v), 0.0);
        c += vColour.w * (SunLight * spec * 0.55 * step(0.001, sun) + SkyLight * rim * rim * rim * 0.5);
    }
    float opacity = uFade.w * (vSecond.w < 0.0 ? -vSecond.w : 1.0);
#ifdef ELLIPSOID
    // faint within, clear at the rim and on the three planes of the principal axes
    vec3 planes = abs(normalize(vUnit));
    vec3 thin = clamp(1.5 - planes / max(fwidth(planes), vec3(1e-4)), 0.0, 1.0);
    float edge = 1.0 - abs(dot(n, normalize(uEye.xyz - vPosition)));
    opacity *= min(1.0, 0.16 + 0.5 * edge * edge + 0.75 * max(thin.x, max(thin.y, thin.z)));
#endif
    oColour = vec4(encode(hazed(c, 1.0 / gl_FragCoord.w)), opacity);
}
