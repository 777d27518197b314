// SPDX-License-Identifier: MIT
#include "app/field_sheet.hpp"

#include "app/hatch.hpp"
#include "app/mixed_hash.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::app {
namespace {

std::uint8_t kind_of(const opening::Cut& cut, std::int32_t region) {
    if (region < 0 || static_cast<std::size_t>(region) >= cut.pieces.size()) return 0;
    return static_cast<std::uint8_t>(
        hatch_of(cut.pieces[static_cast<std::size_t>(region)].material));
}

/// For each of equal steps across the lines: the cell that holds the step's beginning.
void fill_finder(const std::vector<double>& lines_m, std::uint16_t* finder) {
    const double width_m = lines_m.back() - lines_m.front();
    std::uint16_t cell = 0;
    for (int step = 0; step < FieldSheet::finder_steps; ++step) {
        const double at_m = lines_m.front() + width_m * step / FieldSheet::finder_steps;
        while (cell + 2u < lines_m.size() && lines_m[cell + 1u] <= at_m)
            ++cell;
        finder[step] = cell;
    }
}

} // namespace

FieldSheet field_sheet(const assess::SolvedCut& solved) {
    const section::Field& field = solved.field;
    FieldSheet sheet;
    sheet.columns = field.columns();
    sheet.rows = field.rows();
    sheet.line_stride = static_cast<int>(std::max(field.x_m.size(), field.y_m.size()));
    // A node that no solid cell touches is never looked at; NaN might still upset a card.
    for (double c : field.node_c)
        sheet.node_c.push_back(std::isnan(c) ? 0.0f : static_cast<float>(c));
    for (std::size_t k = 0; k < field.region.size(); ++k)
        sheet.kind.push_back(field.conductivity_w_mk[k] == 0
                                 ? FieldSheet::no_solid
                                 : kind_of(solved.cut, field.region[k]));
    const auto stride = static_cast<std::size_t>(sheet.line_stride);
    sheet.lines_m.resize(2 * stride);
    const auto narrow = [](double m) { return static_cast<float>(m); };
    std::transform(field.x_m.begin(), field.x_m.end(), sheet.lines_m.begin(), narrow);
    std::transform(field.y_m.begin(), field.y_m.end(), sheet.lines_m.data() + stride, narrow);
    sheet.finder.resize(2 * FieldSheet::finder_steps);
    fill_finder(field.x_m, sheet.finder.data());
    fill_finder(field.y_m, sheet.finder.data() + FieldSheet::finder_steps);
    sheet.box_m = {narrow(field.x_m.front()), narrow(field.y_m.front()), narrow(field.x_m.back()),
                   narrow(field.y_m.back())};
    return sheet;
}

std::uint64_t field_identity(const assess::SolvedCut& solved) {
    MixedHash hash;
    const section::Field& field = solved.field;
    hash.all(field.x_m.data(), field.x_m.size());
    hash.all(field.y_m.data(), field.y_m.size());
    hash.all(field.node_c.data(), field.node_c.size());
    hash.all(field.region.data(), field.region.size());
    for (const opening::Piece& piece : solved.cut.pieces)
        hash.word(static_cast<std::uint64_t>(piece.material));
    return hash.value();
}

} // namespace shimlight::app
