// SPDX-License-Identifier: MIT
#include "app/solid_boxes.hpp"

#include "app/field_sheet.hpp"

namespace shimlight::app {
namespace {

/// The number of the cell that a px lies in, or -1 beyond the ends: there the share of the nearest
/// cell is none or all of it.
int cell_of(const AxisTexel& px, int cells) {
    const int cell = static_cast<int>(px.cell);
    const bool beyond = (cell == 0 && px.share <= 0) || (cell == cells - 1 && px.share >= 1);
    return beyond ? -1 : cell;
}

} // namespace

std::vector<PixelBox> solid_boxes(const section::Field& field,
                                  const std::vector<std::uint8_t>& kinds, const FieldAxes& axes,
                                  PixelBox box, bool turned) {
    const auto along_x = static_cast<std::size_t>(turned ? box.height : box.width);
    const int along_y = turned ? box.width : box.height;
    const int columns = field.columns(), rows = field.rows();
    std::vector<PixelBox> boxes;
    std::vector<std::uint8_t> open(along_x), row(along_x); // whether each px along x is solid
    int since = 0;                                         // px along y
    const auto close = [&](int at) {
        for (std::size_t from = 0, to = 0; from < along_x; from = to) {
            while (to < along_x && open[to] == open[from])
                ++to;
            if (!open[from]) continue;
            const int start = static_cast<int>(from), length = static_cast<int>(to - from);
            boxes.push_back(turned ? PixelBox{since, start, at - since, length}
                                   : PixelBox{start, since, length, at - since});
        }
        since = at;
    };
    int line = -1;
    for (int i = 0; i < along_y; ++i) {
        const int here = cell_of(axes.texels[static_cast<std::size_t>(axes.length + i)], rows);
        if (here == line) continue;
        line = here;
        for (std::size_t at = 0; at < along_x; ++at) {
            const int column = cell_of(axes.texels[at], columns);
            row[at] = line >= 0 && column >= 0 &&
                      kinds[static_cast<std::size_t>(line * columns + column)] != no_solid;
        }
        if (row == open) continue;
        close(i);
        open = row;
    }
    close(along_y);
    return boxes;
}

} // namespace shimlight::app
