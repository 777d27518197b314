// SPDX-License-Identifier: MIT
// Wash, hatch and isotherms laid over one another. The build of the program puts the version line,
// cell.glsl, wash.glsl, isotherm.glsl and hatch.glsl before this.
in vec2 at_m;
in vec2 pattern_px;

uniform vec4 box_m;
uniform float px_per_m; // device px
uniform float dpr;
uniform float step_c;
uniform float opacity;

out vec4 colour;

const vec3 dark_ink = vec3(0.07, 0.10, 0.13);
const vec3 light_ink = vec3(0.97, 0.96, 0.92);
const vec3 warm_ink = vec3(0.52, 0.30, 0.12);
const vec3 dew_ink = vec3(0.02, 0.30, 0.40);

/// Relative luminance; sRGB taken as a square, near enough to choose an ink.
float luminance(vec3 srgb) {
    return dot(srgb * srgb, vec3(0.2126, 0.7152, 0.0722));
}

void main() {
    Cell cell = cell_at(at_m, box_m);
    uint kind = kind_of(cell);
    if (kind == no_solid) discard;
    vec4 corner_c = corners_c(cell);
    float low_c = mix(corner_c.x, corner_c.y, cell.share.x);
    float high_c = mix(corner_c.z, corner_c.w, cell.share.x);
    float t_c = mix(low_c, high_c, cell.share.y);
    vec2 gradient = vec2(mix(corner_c.y - corner_c.x, corner_c.w - corner_c.z, cell.share.y),
                         high_c - low_c) / cell.size_m;
    float slope = length(gradient) / px_per_m; // K per device px

    vec3 paint = wash(t_c, slope);
    // Ink that reads on this wash: light on the blues, dark on everything lighter.
    float pale = smoothstep(0.15, 0.19, luminance(paint));
    vec3 ink = mix(light_ink, dark_ink, pale);
    paint = mix(paint, ink, hatch(int(kind), pattern_px, dpr) * mix(0.42, 0.40, pale));
    vec3 line_ink = t_c < scale_c.y ? light_ink : warm_ink;
    paint = mix(paint, line_ink, isotherms(t_c, slope, step_c, dpr) * 0.85);
    paint = mix(paint, dew_ink, dew_line(t_c, slope, scale_c.y, dpr));
    colour = vec4(paint, opacity);
}
