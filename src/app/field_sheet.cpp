// SPDX-License-Identifier: MIT
#include "app/field_sheet.hpp"

#include "app/hatch.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>

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

/// FNV-1a over whole words: quick, and good enough to tell neighbours apart.
template <class T> void mix(std::uint64_t& hash, const std::vector<T>& values) {
    for (const T& value : values) {
        std::uint64_t word = 0;
        std::memcpy(&word, &value, sizeof value);
        hash = (hash ^ word) * 1099511628211ull;
        hash ^= hash >> 29;
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
    std::uint64_t hash = 14695981039346656037ull;
    mix(hash, solved.field.x_m);
    mix(hash, solved.field.y_m);
    mix(hash, solved.field.node_c);
    mix(hash, solved.field.region);
    for (const opening::Piece& piece : solved.cut.pieces)
        hash = (hash ^ static_cast<std::uint64_t>(piece.material)) * 1099511628211ull;
    return hash;
}

} // namespace shimlight::app
