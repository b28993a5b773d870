// Unit meshes placed by an affine matrix per instance, then by the model matrix of the craft they belong to.
layout(location = 0) in vec3 aPosition;
layout(location = 1) in vec3 aNormal;
layout(location = 2) in vec4 aRow0;
layout(location = 3) in vec4 aRow1;
layout(location = 4) in vec4 aRow2;
layout(location = 5) in vec4 aColour;  // linear; w gloss 0 to 1
layout(location = 6) in vec4 aSecond;  // linear; w period of the bands along z, m; 0 none; below 0 minus the opacity
uniform mat4 uModel;
out vec3 vPosition;
out vec3 vNormal;
out vec3 vLocal;   // own axes, m
flat out vec3 vLocalNormal;
flat out vec4 vColour;
flat out vec4 vSecond;
#ifdef ELLIPSOID
out vec3 vUnit;
#endif

void main()
{
    vec4 p = vec4(aPosition, 1.0);
    vec3 placed = vec3(dot(aRow0, p), dot(aRow1, p), dot(aRow2, p));
    vec3 x = vec3(aRow0.x, aRow1.x, aRow2.x), y = vec3(aRow0.y, aRow1.y, aRow2.y), z = vec3(aRow0.z, aRow1.z, aRow2.z);
    vec3 s2 = max(vec3(dot(x, x), dot(y, y), dot(z, z)), vec3(1e-12));
    vec3 n = aNormal / s2;
    vNormal = mat3(uModel) * (n.x * x + n.y * y + n.z * z);
    vLocal = aPosition * sqrt(s2);
    vLocalNormal = aNormal;
    vColour = aColour;
    vSecond = aSecond;
#ifdef ELLIPSOID
    vUnit = aPosition;
#endif
    vec4 world = uModel * vec4(placed, 1.0);
    vPosition = world.xyz;
    gl_Position = uViewProjection * world;
}
