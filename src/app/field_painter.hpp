// SPDX-License-Identifier: MIT
// Washes temperature fields onto the canvas in the middle of ImGui's own drawing.
#pragma once

#include "app/mixed_hash.hpp"
#include "view/platform.hpp"

#include <array>
#include <cstdint>
#include <deque>

namespace shimlight::app {

class GlFieldPainter final : public view::FieldPainter {
  public:
    /// Makes the GL objects; again after the context was lost (the old ones are gone then).
    void create();
    /// Starts a frame: pictures of the last one are forgotten.
    void begin();
    void paint(ImDrawList* list, const view::FieldPicture& picture) override;
    /// Adds what the fields of this frame look like.
    void add_to(MixedHash& seen) const;

  private:
    /// A field on the graphics card.
    struct Sheets {
        std::array<unsigned, 4> textures{}; ///< nodes, kinds, lines, finder
        std::array<float, 4> box_m{};
        int columns = 0, rows = 0; ///< nil: nothing kept here yet
        std::uint64_t identity = 0;
        unsigned used_in_frame = 0;
    };
    /// What the callback needs later, when ImGui's list is played.
    struct Job {
        GlFieldPainter* painter = nullptr;
        view::FieldPicture picture;
        std::size_t sheets = 0;
    };
    struct Uniforms {
        int section_to_screen, screen_px, box_m, cells;
        int stops, scale_c, px_per_m, dpr, step_c, opacity;
    };

    bool get_ready();
    std::size_t sheets_of(const assess::SolvedCut& solved);
    static void play(const ImDrawList* list, const ImDrawCmd* command);
    void draw(const Job& job, const ImDrawCmd& command) const;
    void set_placement(const view::FieldPicture& picture, const Sheets& sheets) const;
    void set_manner(const view::FieldPicture& picture) const;

    /// Today and the Remedy at three cuts each.
    static constexpr std::size_t sheets_kept_ = 6;
    std::array<Sheets, sheets_kept_> sheets_;
    std::deque<Job> jobs_;
    unsigned program_ = 0, vertex_array_ = 0;
    unsigned frame_ = 0;
    bool ready_ = false; ///< the program has been linked
    Uniforms uniform_{};
};

} // namespace shimlight::app
