// SPDX-License-Identifier: MIT
#include "app/field_sheet.hpp"

#include "app/hatch.hpp"
#include "app/mixed_hash.hpp"

#include <cmath>

namespace shimlight::app {
namespace {

std::uint8_t kind_of(const opening::Cut& cut, std::int32_t region) {
    if (region < 0 || static_cast<std::size_t>(region) >= cut.pieces.size()) return 0;
    return static_cast<std::uint8_t>(
        hatch_of(cut.pieces[static_cast<std::size_t>(region)].material));
}

} // namespace

std::vector<float> node_sheet(const section::Field& field) {
    std::vector<float> sheet;
    sheet.reserve(field.node_c.size());
    // A node that no solid cell touches is never looked at; NaN might still upset a card.
    for (double c : field.node_c)
        sheet.push_back(std::isnan(c) ? 0.0f : static_cast<float>(c));
    return sheet;
}

std::vector<std::uint8_t> kind_sheet(const assess::SolvedCut& solved) {
    const section::Field& field = solved.field;
    std::vector<std::uint8_t> sheet;
    sheet.reserve(field.region.size());
    for (std::size_t k = 0; k < field.region.size(); ++k)
        sheet.push_back(field.conductivity_w_mk[k] == 0 ? no_solid
                                                        : kind_of(solved.cut, field.region[k]));
    return sheet;
}

std::uint64_t shape_identity(const assess::SolvedCut& solved) {
    MixedHash hash;
    const section::Field& field = solved.field;
    hash.all(field.x_m.data(), field.x_m.size());
    hash.all(field.y_m.data(), field.y_m.size());
    hash.all(field.region.data(), field.region.size());
    for (const opening::Piece& piece : solved.cut.pieces)
        hash.word(static_cast<std::uint64_t>(piece.material));
    return hash.value();
}

std::uint64_t field_identity(const assess::SolvedCut& solved) {
    MixedHash hash;
    hash.word(shape_identity(solved));
    hash.all(solved.field.node_c.data(), solved.field.node_c.size());
    return hash.value();
}

} // namespace shimlight::app
