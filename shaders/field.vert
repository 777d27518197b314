#version 300 es
// SPDX-License-Identifier: MIT
// One instance is one cell of the solved grid; its four corners come from gl_VertexID.
precision highp float;

layout(location = 0) in vec4 cell_m;     // x0, y0, x1, y1 in the section
layout(location = 1) in vec4 corners_c;  // at (x0,y0), (x1,y0), (x0,y1), (x1,y1)
layout(location = 2) in float cell_hatch;

uniform mat3 section_to_screen; // m to CSS px, turned where the cut is drawn in plan
uniform vec2 screen_px;         // size of the canvas in CSS px

out vec2 share;       // 0…1 across the cell
out vec2 pattern_px;  // CSS px from the section's origin: hatches move along with the drawing
flat out vec4 corner_c;
flat out vec2 size_m;
flat out int hatch_kind;

void main() {
    share = vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1));
    vec2 at_m = mix(cell_m.xy, cell_m.zw, share);
    vec2 at_px = (section_to_screen * vec3(at_m, 1.0)).xy;
    pattern_px = at_px - section_to_screen[2].xy;
    corner_c = corners_c;
    size_m = cell_m.zw - cell_m.xy;
    hatch_kind = int(cell_hatch + 0.5);
    gl_Position = vec4(at_px.x / screen_px.x * 2.0 - 1.0, 1.0 - at_px.y / screen_px.y * 2.0, 0.0, 1.0);
}
