// SPDX-License-Identifier: MIT
// Slice: the cut through wall, shim space, frame and glass, Today and the Remedy together.
#pragma once

#include "view/callout.hpp"
#include "view/section_ink.hpp"
#include "view/session.hpp"

#include <array>
#include <optional>

namespace shimlight::view {

/// The wash of every picture: from outdoors to the room, or as far as the cuts go beyond, hinged
/// at the dew point.
TemperatureScale scale_for(const Session& session);

class Slice {
  public:
    opening::Position position = opening::Position::sill;

    void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);
    /// For the report: the cut whole and at rest, nothing to press.
    void draw_paper(Ui& ui, const Session& session, Box box);
    /// Another opening: look at it from the start.
    void reset_look();

  private:
    struct Outline {
        Solved of;
        std::vector<OutlineStroke> strokes;
        section::Rect extent;
        std::vector<section::FluxLine> heat; ///< once they are asked for
        double heat_each_w_m = 0;            ///< what each of them carries
    };
    struct Probe {
        section::Point at;
        Shown on = Shown::today;
    };

    float zoom_ = 1;
    ImVec2 pan_{0, 0};
    float fade_ = 1;             ///< 0 Today … 1 the Remedy, on narrow screens
    double animate_until_s_ = 0; ///< creeping air is seen to move for a while after a change
    int seen_revision_ = -1;
    std::optional<Probe> probe_;
    std::array<Outline, 2> outlines_;
    std::array<std::optional<DrawnCut>, 2> drawn_; ///< as placed in this frame

    std::array<PlacedBefore, 2> placed_;

    static void read(Outline& lines, const Solved& solved);
    void place_cuts(const Session& session, Box box, bool side_by_side);
    void place_plan(const Session& session, Box box);
    void prepare(const Session& session, Shown of, Placement placement, float opacity);
    void navigate(Ui& ui, Box box);
    void draw_air(Ui& ui, Box box);
    void draw_cut_air(Ui& ui, const DrawnCut& cut, Box area) const;
    void draw_cut(Ui& ui, const Session& session, Shown of, Box area);
    struct Written {
        bool roomy = false;
        bool headed = false; ///< with what the half shows
        bool legend = false; ///< with a small legend of its own
        float airs_px = 0;   ///< the airs' names stand this much higher
        float foot_px = 0;   ///< taken by the large one
    };
    void draw_labels(Ui& ui, const Session& session, Shown of, Box area, Written how);
    void add_callouts(const Ui& ui, Shown of, CalloutPlacer& placer, bool roomy) const;
    void draw_probe(Ui& ui, Box box);
    void controls(Ui& ui, Session& session, Box box, bool wide);
    void describe(Ui& ui, const Session& session, Shown of, Box box);
    Box half(Box box, Shown of, bool side_by_side) const;
    bool plan() const { return position == opening::Position::jamb; }
};

} // namespace shimlight::view
