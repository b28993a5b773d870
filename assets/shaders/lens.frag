// Looks up a bent picture in two straight ones that look left and right of the middle, side by side in one texture.
in vec2 vPlace;
uniform sampler2D uPicture;
out vec4 oColour;

void main() { oColour = texture(uPicture, vPlace); }
