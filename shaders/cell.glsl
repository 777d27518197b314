// SPDX-License-Identifier: MIT
// The cell of the solved grid that a device px lies in: looked up along each axis of the section, for
// a section lies upright or turned, never askew. The sheet is app/field_axes.hpp's.
uniform highp sampler2D axis_sheet; // row 0 along x, row 1 along y: cell, 0…1 across it, its px
uniform ivec2 corner;               // the device px that the sheet begins with
uniform bool in_plan;               // x of the section runs down the screen

struct Cell {
    ivec2 at;
    vec2 share;   // 0…1 across the cell
    vec2 size_px; // device px
};

ivec2 place() {
    return ivec2(gl_FragCoord.xy) - corner;
}

Cell cell_here() {
    ivec2 along = in_plan ? place().yx : place();
    vec3 x = texelFetch(axis_sheet, ivec2(along.x, 0), 0).xyz;
    vec3 y = texelFetch(axis_sheet, ivec2(along.y, 1), 0).xyz;
    return Cell(ivec2(x.x, y.x), vec2(x.y, y.y), vec2(x.z, y.z));
}
