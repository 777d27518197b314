#version 300 es
// SPDX-License-Identifier: MIT
// The whole section as one quad; its corners come from gl_VertexID.
precision highp float;

uniform mat3 section_to_screen; // m to CSS px, turned where the cut is drawn in plan
uniform vec2 screen_px;         // size of the canvas in CSS px
uniform vec4 box_m;             // x0, y0, x1, y1 of the section

out vec2 at_m;
out vec2 pattern_px; // CSS px from the section's origin: hatches move along with the drawing

void main() {
    at_m = mix(box_m.xy, box_m.zw, vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1)));
    vec2 at_px = (section_to_screen * vec3(at_m, 1.0)).xy;
    pattern_px = at_px - section_to_screen[2].xy;
    gl_Position = vec4(at_px.x / screen_px.x * 2.0 - 1.0, 1.0 - at_px.y / screen_px.y * 2.0, 0.0, 1.0);
}
