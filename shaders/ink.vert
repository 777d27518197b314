#version 300 es
// SPDX-License-Identifier: MIT
// Corners of ImGui's shapes and letters.
precision highp float;

layout(location = 0) in vec2 at_px; // CSS px
layout(location = 1) in vec2 letter_at;
layout(location = 2) in vec4 ink;

uniform vec2 screen_px;

out vec2 letter;
out vec4 tint;

void main() {
    letter = letter_at;
    tint = ink;
    gl_Position = vec4(at_px.x / screen_px.x * 2.0 - 1.0, 1.0 - at_px.y / screen_px.y * 2.0, 0.0, 1.0);
}
