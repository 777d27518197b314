#version 300 es
// SPDX-License-Identifier: MIT
precision mediump float;

in highp vec2 letter;
in vec4 tint;

uniform sampler2D letters; // cover only

out vec4 colour;

void main() {
    colour = vec4(tint.rgb, tint.a * texture(letters, letter).r);
}
