#version 300 es
// SPDX-License-Identifier: MIT
// The whole section as one quad; its corners come from gl_VertexID.
precision highp float;

uniform vec4 corners_px; // two opposite corners of the section, CSS px
uniform vec2 origin_px;  // of the section
uniform vec2 screen_px;  // size of the canvas in CSS px

out vec2 pattern_px; // from the section's origin: hatches move along with the drawing

void main() {
    vec2 at_px = mix(corners_px.xy, corners_px.zw, vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1)));
    pattern_px = at_px - origin_px;
    gl_Position = vec4(at_px.x / screen_px.x * 2.0 - 1.0, 1.0 - at_px.y / screen_px.y * 2.0, 0.0, 1.0);
}
