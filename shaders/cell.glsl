// SPDX-License-Identifier: MIT
// The solved grid, and the cell of it that a place lies in. Sheets as in app/field_sheet.hpp.
uniform highp sampler2D node_sheet;   // °C at grid crossings
uniform highp usampler2D kind_sheet;  // hatch of each cell
uniform highp sampler2D line_sheet;   // m; row 0 x, row 1 y
uniform highp usampler2D finder_sheet;
uniform ivec2 cells; // columns, rows

const uint no_solid = 255u;

struct Cell {
    ivec2 at;
    vec2 share;  // 0…1 across the cell
    vec2 size_m;
};

float line_m(int axis, int i) {
    return texelFetch(line_sheet, ivec2(i, axis), 0).x;
}

/// The cell along one axis: a table of equal steps, then on while the next line is passed.
int find(int axis, float s_m, float low_m, float high_m) {
    int steps = textureSize(finder_sheet, 0).x;
    int step = clamp(int((s_m - low_m) / (high_m - low_m) * float(steps)), 0, steps - 1);
    int i = int(texelFetch(finder_sheet, ivec2(step, axis), 0).x);
    int last = cells[axis] - 1;
    for (int tries = 0; tries < 64 && i < last && line_m(axis, i + 1) <= s_m; ++tries) ++i;
    return i;
}

Cell cell_at(vec2 p_m, vec4 box_m) {
    Cell found;
    found.at = ivec2(find(0, p_m.x, box_m.x, box_m.z), find(1, p_m.y, box_m.y, box_m.w));
    vec2 low = vec2(line_m(0, found.at.x), line_m(1, found.at.y));
    vec2 high = vec2(line_m(0, found.at.x + 1), line_m(1, found.at.y + 1));
    found.size_m = high - low;
    found.share = clamp((p_m - low) / found.size_m, 0.0, 1.0);
    return found;
}

uint kind_of(Cell cell) {
    return texelFetch(kind_sheet, cell.at, 0).x;
}

/// °C at (x0,y0), (x1,y0), (x0,y1), (x1,y1) of a cell.
vec4 corners_c(Cell cell) {
    return vec4(texelFetch(node_sheet, cell.at, 0).x,
                texelFetch(node_sheet, cell.at + ivec2(1, 0), 0).x,
                texelFetch(node_sheet, cell.at + ivec2(0, 1), 0).x,
                texelFetch(node_sheet, cell.at + ivec2(1, 1), 0).x);
}
