// Shared by all shaders: the uniform block, haze and encoding. Before it stand the constants of Daylight.cs.
// Frame G: x east, y north, z up, m.
layout(std140) uniform Frame {
    mat4 uViewProjection;
    mat4 uFieldLight;
    mat4 uCraftLightA;
    mat4 uCraftLightB;
    vec4 uEye;   // xyz, time
    vec4 uSun;   // unit vector to the sun, height of the sea
    vec4 uArea;  // corner of the field's textures, one over their size
    vec4 uScreen; // scale of the projection, one pixel in clip space
};

// sRGB encoding (IEC 61966-2-1) as a sum of square roots: within 0.3 % of full scale, without a power function.
vec3 encode(vec3 c)
{
    vec3 s1 = sqrt(max(c, vec3(0.0)));
    vec3 s2 = sqrt(s1);
    vec3 s3 = sqrt(s2);
    return 0.662002687 * s1 + 0.684122060 * s2 - 0.323583601 * s3 - 0.0225411470 * c;
}

vec3 ambient(float up) { return mix(Bounce, SkyLight, 0.5 + 0.5 * up); }

vec3 hazed(vec3 c, float depth) { return mix(HazeColour, c, exp2(-HazePerMetre * depth)); }

// The same for encoded colours.
vec3 hazedEncoded(vec3 c, float depth) { return mix(HazeEncoded, c, exp2(-HazePerMetre * depth)); }

#ifdef SHADOWS
uniform sampler2DShadow uFieldShadow;
uniform sampler2DShadow uCraftShadow;

// Share of the sun that reaches a point; sunward moves it out of its own shadow, m.
float sunlit(vec3 p, vec3 normal)
{
    vec3 q = p + normal * 0.12;
    vec3 f = (uFieldLight * vec4(q, 1.0)).xyz;
    float s = 1.0;
    if (all(greaterThan(f, vec3(0.0))) && all(lessThan(f, vec3(1.0))))
    {
#ifdef FINE
        vec2 t = 0.6 / vec2(textureSize(uFieldShadow, 0));
        s = 0.25 * (texture(uFieldShadow, f + vec3(-t.x, -t.y, 0)) + texture(uFieldShadow, f + vec3(t.x, -t.y, 0))
            + texture(uFieldShadow, f + vec3(-t.x, t.y, 0)) + texture(uFieldShadow, f + vec3(t.x, t.y, 0)));
#else
        s = texture(uFieldShadow, f);
#endif
    }
    vec3 a = (uCraftLightA * vec4(p, 1.0)).xyz;
    if (a.x > 0.0 && a.x < 0.5 && a.y > 0.0 && a.y < 1.0) s = min(s, texture(uCraftShadow, a));
    vec3 b = (uCraftLightB * vec4(p, 1.0)).xyz;
    if (b.x > 0.5 && b.x < 1.0 && b.y > 0.0 && b.y < 1.0) s = min(s, texture(uCraftShadow, b));
    return s;
}
#endif
