in vec2 vPlace;
uniform sampler2D uSky;
out vec4 oColour;

void main() { oColour = vec4(texture(uSky, vPlace).rgb, 1.0); }
