// SPDX-License-Identifier: MIT
#include "app/field_mesh.hpp"

#include "app/hatch.hpp"

#include <cmath>
#include <cstring>

namespace shimlight::app {
namespace {

float corner_c(const section::Field& field, int i, int j, double cell_c) {
    const double node_c = field.node_c[static_cast<std::size_t>(j * (field.columns() + 1) + i)];
    return static_cast<float>(std::isnan(node_c) ? cell_c : node_c);
}

float hatch_number(const opening::Cut& cut, std::int32_t region) {
    if (region < 0 || static_cast<std::size_t>(region) >= cut.pieces.size()) return 0;
    const auto material = cut.pieces[static_cast<std::size_t>(region)].material;
    return static_cast<float>(static_cast<int>(hatch_of(material)));
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

std::vector<CellInstance> field_mesh(const assess::SolvedCut& solved) {
    const section::Field& field = solved.field;
    std::vector<CellInstance> cells;
    cells.reserve(static_cast<std::size_t>(field.cells()));
    for (int j = 0; j < field.rows(); ++j)
        for (int i = 0; i < field.columns(); ++i) {
            const auto at = static_cast<std::size_t>(j * field.columns() + i);
            if (field.conductivity_w_mk[at] == 0) continue;
            const auto left = static_cast<std::size_t>(i), low = static_cast<std::size_t>(j);
            const double c = field.cell_c[at];
            cells.push_back(
                {static_cast<float>(field.x_m[left]), static_cast<float>(field.y_m[low]),
                 static_cast<float>(field.x_m[left + 1]), static_cast<float>(field.y_m[low + 1]),
                 corner_c(field, i, j, c), corner_c(field, i + 1, j, c),
                 corner_c(field, i, j + 1, c), corner_c(field, i + 1, j + 1, c),
                 hatch_number(solved.cut, field.region[at])});
        }
    return cells;
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
