#version 300 es
// SPDX-License-Identifier: MIT
// The boxes of a section that have a solid in them (app/solid_boxes.hpp).
precision highp float;
precision highp int;

layout(location = 0) in vec2 at; // device px

uniform ivec2 corner;   // the device px that they count from
uniform vec2 canvas_px; // device px

void main() {
    gl_Position = vec4((at + vec2(corner)) / canvas_px * 2.0 - 1.0, 0.0, 1.0);
}
