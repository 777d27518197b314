// SPDX-License-Identifier: MIT
#include "section/isotherms.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <unordered_map>

namespace shimlight::section {
namespace {

/// A corner of a triangle. Its key tells it from all others of the field.
struct Vertex {
    Point at;
    double c = 0;
    std::uint64_t key = 0;
};

/// A piece of a line through one triangle, named by the triangle's sides that it crosses.
struct Piece {
    Point from, to;
    std::uint64_t from_side = 0, to_side = 0;
};

/// Sides are told by their two vertices; keys are below 2³².
std::uint64_t side_key(const Vertex& a, const Vertex& b) {
    constexpr int half = 32;
    return a.key < b.key ? (a.key << half) + b.key : (b.key << half) + a.key;
}

class Pieces {
  public:
    Pieces(const Field& field, double c) : f_(field), c_(c) {}

    std::vector<Piece> find() {
        for (int j = 0; j < f_.rows(); ++j) {
            for (int i = 0; i < f_.columns(); ++i) {
                if (f_.conductivity_w_mk[cell(i, j)] > 0) cut_cell(i, j);
            }
        }
        return std::move(pieces_);
    }

  private:
    std::size_t cell(int i, int j) const { return static_cast<std::size_t>(j * f_.columns() + i); }

    /// Keys count the columns and rows of quarter cells: the middles of the quarters have some too.
    std::uint64_t row_keys() const { return static_cast<std::uint64_t>(4 * f_.columns() + 2); }

    /// A vertex of the grid of half cells: (a, b) = (2i + 1, 2j + 1) is the centre of cell (i, j).
    Vertex vertex(int a, int b) const {
        const int i = a / 2, j = b / 2, columns = f_.columns();
        const auto half = [](const std::vector<double>& lines, int at) {
            const auto n = static_cast<std::size_t>(at / 2);
            return at % 2 == 0 ? lines[n] : 0.5 * (lines[n] + lines[n + 1]);
        };
        const auto value = [](const std::vector<double>& values, int at) {
            return values[static_cast<std::size_t>(at)];
        };
        double c = 0;
        if (a % 2 == 1)
            c = b % 2 == 1 ? f_.cell_c[cell(i, j)] : value(f_.y_face_c, j * columns + i);
        else
            c = b % 2 == 1 ? value(f_.x_face_c, j * (columns + 1) + i)
                           : value(f_.node_c, j * (columns + 1) + i);
        const std::uint64_t key = static_cast<std::uint64_t>(2 * b) * row_keys();
        return {{half(f_.x_m, a), half(f_.y_m, b)}, c, key + static_cast<std::uint64_t>(2 * a)};
    }

    void cut_cell(int i, int j) {
        for (int b = 2 * j; b < 2 * j + 2; ++b) {
            for (int a = 2 * i; a < 2 * i + 2; ++a)
                cut_quarter(a, b);
        }
    }

    void cut_quarter(int a, int b) {
        const std::array<Vertex, 4> ring{vertex(a, b), vertex(a + 1, b), vertex(a + 1, b + 1),
                                         vertex(a, b + 1)};
        bool above = false, below = false;
        Vertex middle;
        for (const Vertex& v : ring) {
            (v.c >= c_ ? above : below) = true;
            middle.at.x_m += 0.25 * v.at.x_m;
            middle.at.y_m += 0.25 * v.at.y_m;
            middle.c += 0.25 * v.c;
        }
        if (!above || !below) return;
        middle.key = ring[0].key + row_keys() + 1;
        for (std::size_t n = 0; n < ring.size(); ++n)
            cut_triangle(ring[n], ring[(n + 1) % ring.size()], middle);
    }

    /// The corners counterclockwise.
    void cut_triangle(const Vertex& a, const Vertex& b, const Vertex& d) {
        const std::array<const Vertex*, 3> corners{&a, &b, &d};
        for (std::size_t n = 0; n < 3; ++n) {
            const Vertex &alone = *corners[n], &next = *corners[(n + 1) % 3],
                         &last = *corners[(n + 2) % 3];
            const bool is_above = alone.c >= c_;
            if (is_above == (next.c >= c_) || is_above == (last.c >= c_)) continue;
            const Piece piece{cross(alone, last), cross(alone, next), side_key(alone, last),
                              side_key(alone, next)};
            pieces_.push_back(is_above ? Piece{piece.to, piece.from, piece.to_side, piece.from_side}
                                       : piece);
        }
    }

    /// The same to the last digit from either triangle.
    Point cross(const Vertex& one, const Vertex& other) const {
        const Vertex &a = one.key < other.key ? one : other, &b = one.key < other.key ? other : one;
        const double share = (c_ - a.c) / (b.c - a.c);
        return {a.at.x_m + share * (b.at.x_m - a.at.x_m), a.at.y_m + share * (b.at.y_m - a.at.y_m)};
    }

    const Field& f_;
    double c_;
    std::vector<Piece> pieces_;
};

/// Joins pieces that meet at a side. A side lies between two triangles at most, so that one piece
/// starts and one ends there.
std::vector<Isotherm> joined(const std::vector<Piece>& pieces, double c) {
    std::unordered_map<std::uint64_t, std::size_t> starting, ending;
    for (std::size_t n = 0; n < pieces.size(); ++n) {
        starting.emplace(pieces[n].from_side, n);
        ending.emplace(pieces[n].to_side, n);
    }
    std::vector<bool> used(pieces.size(), false);
    std::vector<Isotherm> lines;
    const auto follow = [&](std::size_t n) {
        Isotherm line{c, {pieces[n].from}};
        while (!used[n]) {
            used[n] = true;
            line.points.push_back(pieces[n].to);
            const auto next = starting.find(pieces[n].to_side);
            if (next == starting.end()) break;
            n = next->second;
        }
        lines.push_back(std::move(line));
    };
    for (std::size_t n = 0; n < pieces.size(); ++n) // those with ends, from their start
        if (!used[n] && ending.find(pieces[n].from_side) == ending.end()) follow(n);
    for (std::size_t n = 0; n < pieces.size(); ++n)
        if (!used[n]) follow(n);
    return lines;
}

} // namespace

std::vector<Isotherm> isotherms(const Field& field, double c) {
    return joined(Pieces(field, c).find(), c);
}

} // namespace shimlight::section
