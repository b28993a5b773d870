// White paint, worn; thin lines far away fade instead of flickering.
in vec2 vAcross;
in vec2 vPosition;
uniform sampler2D uLandColour;
uniform sampler2D uGrain;
out vec4 oColour;

void main()
{
    float x = abs(vAcross.x) * vAcross.y;
    float w = max(fwidth(vAcross.x) * vAcross.y, 1e-4);
    float cover = clamp((1.0 - x) / w + 0.5, 0.0, 1.0) * min(1.0, 2.0 / w);
    float worn = texture(uGrain, vPosition * 0.53).r;
    float land = texture(uLandColour, (vPosition - uArea.xy) * uArea.zw).a;
#ifdef SHADOWS
    float sun = uSun.z * sunlit(vec3(vPosition, 0.0), vec3(0.0, 0.0, 1.0));
#else
    float sun = uSun.z * land;
#endif
    vec3 c = vec3(0.60, 0.60, 0.57) * (SkyLight + SunLight * sun) * (0.82 + 0.36 * worn);
    oColour = vec4(encode(hazed(c, 1.0 / gl_FragCoord.w)), cover * (0.62 + 0.36 * worn));
}
