// Lamps: sprites that face the eye and never get smaller than two pixels.
layout(location = 0) in vec2 aPosition;
layout(location = 1) in vec4 aPlace;   // centre in G; radius, m
layout(location = 2) in vec4 aColour;  // encoded; w strength
out vec2 vPlace;
flat out vec4 vColour;

void main()
{
    vPlace = aPosition;
    vColour = aColour;
    // a little towards the eye, so that the lamp's own body does not hide it
    vec3 p = aPlace.xyz + normalize(uEye.xyz - aPlace.xyz) * aPlace.w * 0.5;
    vec4 c = uViewProjection * vec4(p, 1.0);
    vec2 reach = max(aPlace.w * uScreen.xy, 2.2 * c.w * uScreen.zw);
    gl_Position = vec4(c.xy + aPosition * reach, c.z, c.w);
}
