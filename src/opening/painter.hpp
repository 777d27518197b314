// SPDX-License-Identifier: MIT
// Appends regions of the painting and the pieces that name them, always together.
#pragma once

#include "opening/cut.hpp"

#include <string_view>

namespace shimlight::opening {

/// A rectangle of the cut. u runs from outdoors to indoors, v from the wall towards the glass.
struct Box {
    double u0_m = 0, v0_m = 0, u1_m = 0, v1_m = 0;
};

/// What a piece is called and which part of the inside surface it makes.
struct Label {
    std::string_view name;
    Part part = Part::hidden;
};

/// Which way air moves within a cut.
enum class Way { inwards, outwards, to_wall, to_glass };

class Painter {
  public:
    /// `width_m` across the wall, `height_m` along it. At the head the wall lies at large y: v is
    /// mirrored.
    Painter(Position position, double width_m, double height_m);

    void solid(const Box& box, Material material, const Label& label);
    void solid(const Box& box, Material material, const Label& label, double conductivity_w_mk);
    /// A closed air space; heat flows across the wall.
    void cavity(const Box& box, const Label& label, double emissivity,
                section::Ventilation ventilation = section::Ventilation::none);
    void air(const Box& box, Material side, int air);
    /// What follows is painted upside down: v from the other end.
    void turn_over() { mirrored_ = !mirrored_; }

    /// A part of a stream's way over what is painted in `box`.
    section::Reach reach(const Box& box, Way way, double film_w_m2k) const;

    /// y of a place v from the wall's end of the cut.
    double y_m(double v_m) const;
    section::Point point(double u_m, double v_m) const { return {u_m, y_m(v_m)}; }
    double width_m() const { return cut_.painting.width_m; }
    double height_m() const { return cut_.painting.height_m; }

    Cut& cut() { return cut_; }

  private:
    section::Rect rect(const Box& box) const;
    void add(const Box& box, const section::Region& region, const Piece& piece);

    Cut cut_;
    bool mirrored_;
};

} // namespace shimlight::opening
