// SPDX-License-Identifier: MIT
// What a section's picture owes to its shape and its place on the screen: the cell under each px
// and the hatch of its material. It is made anew only when one of them changes; the temperatures,
// which follow every lever, are laid over it. Where software draws, hatching in each frame would
// take half its time.
#pragma once

#include "app/pixel_box.hpp"
#include "view/platform.hpp"

#include <array>
#include <cstdint>

namespace shimlight::app {

struct Hatching {
    unsigned cover = 0;   ///< as shaders/hatching.frag draws it
    unsigned axes = 0;    ///< of app/field_axes.hpp
    unsigned solids = 0;  ///< triangles of app/solid_boxes.hpp's boxes, a vertex array
    unsigned corners = 0; ///< of them
    int corner_count = 0;
    PixelBox box; ///< of the canvas; the first texel of both is its lower left
    std::uint64_t identity = 0;
    unsigned used_in_frame = 0;
    /// With the program in use, which takes shaders/field.vert.
    void draw_solids() const;
};

class Hatchings {
  public:
    /// Makes the GL program; again after the context was lost (what was is gone then).
    void create();
    /// False when the program could not be linked. Waits for it.
    bool get_ready();
    void begin() { ++frame_; }
    /// The one of a picture whose place on the canvas is not empty, drawn if need be.
    const Hatching& of(const view::FieldPicture& picture, PixelBox box);

  private:
    void make(Hatching& made, const view::FieldPicture& picture);

    /// Today and the Remedy at three cuts each.
    std::array<Hatching, 6> kept_;
    unsigned program_ = 0, framebuffer_ = 0, kinds_ = 0;
    unsigned frame_ = 0;
    int canvas_px_ = 0, pattern_from_px_ = 0, in_plan_ = 0, dpr_ = 0;
};

} // namespace shimlight::app
