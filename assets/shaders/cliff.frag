// Rock of the cliffs: layers by height, grain, wet and dark at the foot.
in vec3 vPosition;
flat in vec3 vNormal;
in vec4 vColour;
uniform sampler2D uGrain;
out vec4 oColour;

void main()
{
    vec3 n = normalize(vNormal);
    float along = vPosition.x - vPosition.y;
    vec4 broad = texture(uGrain, vec2(along * 0.035, vPosition.z * 0.16));
    vec4 fine = texture(uGrain, vec2(along * 0.21, vPosition.z * 0.4));
    vec3 albedo = vColour.rgb * (0.55 + 0.55 * broad.g + 0.42 * (fine.b - 0.25));
    float sun = max(dot(n, uSun.xyz), 0.0);
#ifdef SHADOWS
    sun *= sunlit(vPosition, n);
#endif
    vec3 c = albedo * (ambient(n.z) + SunLight * sun);
    oColour = vec4(encode(hazed(c, 1.0 / gl_FragCoord.w)), 1.0);
}
