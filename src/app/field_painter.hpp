// SPDX-License-Identifier: MIT
// Washes temperature fields onto the canvas in the middle of ImGui's own drawing.
#pragma once

#include "app/hatching.hpp"
#include "app/mixed_hash.hpp"

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
    /// Draws what is not drawn on the canvas itself. Before the canvas is cleared: a phone's card
    /// would otherwise store and fetch what is on it already. `canvas_px`: its size in device px.
    void prepare(ImVec2 canvas_px);

  private:
    /// Temperatures on the graphics card.
    struct Sheet {
        unsigned nodes = 0;
        std::uint64_t identity = 0;
        unsigned used_in_frame = 0;
    };
    /// What the callback needs later, when ImGui's list is played.
    struct Job {
        GlFieldPainter* painter = nullptr;
        view::FieldPicture picture;
        PixelBox box;
        std::size_t sheet = 0;
        Hatching hatching{};
    };
    struct Uniforms {
        int canvas_px, corner, in_plan, scale, dpr, step_c, opacity;
    };

    bool get_ready();
    void make_wash();
    std::size_t sheet_of(const assess::SolvedCut& solved);
    static void play(const ImDrawList* list, const ImDrawCmd* command);
    void draw(const Job& job, const ImDrawCmd& command) const;
    void set_manner(const Job& job) const;

    /// Today and the Remedy at three cuts each.
    static constexpr std::size_t sheets_kept_ = 6;
    std::array<Sheet, sheets_kept_> sheets_;
    Hatchings hatchings_;
    std::deque<Job> jobs_;
    unsigned program_ = 0, wash_ = 0;
    unsigned frame_ = 0;
    bool ready_ = false; ///< the programs have been linked
    Uniforms uniform_{};
    ImVec2 canvas_px_;
};

} // namespace shimlight::app
