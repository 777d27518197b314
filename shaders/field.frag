// SPDX-License-Identifier: MIT
// Wash, hatch and isotherms laid over one another. It runs for every px of every frame in which
// something moves: what does not follow from the temperature is looked up (hatching.frag). The build of
// the program puts the version line, cell.glsl, wash.glsl and isotherm.glsl before this.
uniform highp sampler2D node_sheet; // °C at grid crossings
uniform sampler2D cover_sheet;      // as hatching.frag draws it
uniform float dpr;
uniform float step_c;
uniform float opacity;

out vec4 colour;

const vec3 dark_ink = vec3(0.07, 0.10, 0.13);
const vec3 light_ink = vec3(0.97, 0.96, 0.92);
const vec3 warm_ink = vec3(0.52, 0.30, 0.12);
const vec3 dew_ink = vec3(0.02, 0.30, 0.40);

/// °C at (x0,y0), (x1,y0), (x0,y1), (x1,y1) of a cell.
vec4 corners_c(Cell cell) {
    return vec4(texelFetch(node_sheet, cell.at, 0).x,
                texelFetch(node_sheet, cell.at + ivec2(1, 0), 0).x,
                texelFetch(node_sheet, cell.at + ivec2(0, 1), 0).x,
                texelFetch(node_sheet, cell.at + ivec2(1, 1), 0).x);
}

void main() {
    Cell cell = cell_here();
    vec4 corner_c = corners_c(cell);
    float low_c = mix(corner_c.x, corner_c.y, cell.share.x);
    float high_c = mix(corner_c.z, corner_c.w, cell.share.x);
    float t_c = mix(low_c, high_c, cell.share.y);
    vec2 gradient = vec2(mix(corner_c.y - corner_c.x, corner_c.w - corner_c.z, cell.share.y),
                         high_c - low_c) / cell.size_px;
    float slope = length(gradient); // K per device px

    vec4 washed = wash(t_c);
    float cover = texelFetch(cover_sheet, place(), 0).x;
    vec3 ink = mix(light_ink, dark_ink, washed.a);
    vec3 paint = mix(washed.rgb, ink, cover * mix(0.42, 0.40, washed.a));
    vec3 line_ink = t_c < scale.y ? light_ink : warm_ink;
    paint = mix(paint, line_ink, isotherms(t_c, slope, step_c, dpr) * 0.85);
    paint = mix(paint, dew_ink, dew_line(t_c, slope, scale.y, dpr));
    colour = vec4(paint, opacity);
}
