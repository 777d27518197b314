// SPDX-License-Identifier: MIT
// What a section's picture owes to its shape alone: r the cover of the hatch, g whether there is a
// solid at all. Drawn once for a place on the screen (app/hatching.hpp). The build of the program puts
// the version line, cell.glsl and hatch.glsl before this.
in vec2 pattern_px;

uniform highp usampler2D kind_sheet; // hatch of each cell
uniform float dpr;

out vec2 shape;

const uint no_solid = 255u; // app/field_sheet.hpp

void main() {
    uint kind = texelFetch(kind_sheet, cell_here().at, 0).x;
    shape = kind == no_solid ? vec2(0.0) : vec2(hatch(int(kind), pattern_px, dpr), 1.0);
}
