// SPDX-License-Identifier: MIT
// What a section's picture owes to its shape alone, the cover of the hatch. Drawn once for a place on
// the screen (app/hatching.hpp). The build of the program puts the version line, cell.glsl and
// hatch.glsl before this.
uniform highp usampler2D kind_sheet; // hatch of each cell
uniform vec2 pattern_from_px;        // of the sheet's lower left
uniform float dpr;

out float cover;

void main() {
    vec2 pattern_px = pattern_from_px + gl_FragCoord.xy * vec2(1.0, -1.0) / dpr;
    uint kind = texelFetch(kind_sheet, cell_here().at, 0).x;
    cover = hatch(int(kind), pattern_px, dpr);
}
