// SPDX-License-Identifier: MIT
// All generic builds with what each can reach, from a few drafts of sections, for a label to be
// looked up in.
#pragma once

#include "assess/generic_build.hpp"
#include "assess/label.hpp"

#include <array>
#include <optional>
#include <vector>

namespace shimlight::assess {

struct Reach {
    double low = 0, high = 0;
    bool holds(double value, double margin) const {
        return value >= low - margin && value <= high + margin;
    }
};

/// Frame and spacer with so many panes: the whole window's values as lines of the centre's.
struct FrameLine {
    opening::FrameMaterial frame = opening::FrameMaterial::wood;
    opening::SpacerKind spacer = opening::SpacerKind::aluminium;
    int panes = 1;
    double u_at_0 = 0, u_slope = 0; ///< whole-window U = u_at_0 + u_slope · centre U
    double shgc_at_0 = 0, glass_share = 0;
};

/// Glass with the centre values its knobs reach.
struct GlassSpan {
    GlassChoice glass;
    Reach u, shgc, light;
    std::array<double, 5> u_at{}; ///< at the knob's whole numbers, usual thickness
};

struct SearchSpace {
    std::vector<FrameLine> frames;
    std::vector<GlassSpan> glasses;
};

/// Of the label's frame and panes, where it names them; all otherwise.
SearchSpace search_space(const Label& label);

/// search_space() in steps of at most one section.
class SpaceSearch {
  public:
    explicit SpaceSearch(const Label& label);
    bool step(); ///< false: nothing is left to do
    std::size_t frames_done() const { return frame_; }
    std::size_t frames_all() const { return frames_.size(); }

    SearchSpace space; ///< whole once nothing is left to do

    /// Of a whole window, with its jamb; or of a jamb alone.
    struct Drafted {
        Rated window;
        double jamb_w_mk = 0;
    };

  private:
    struct Draft {
        std::size_t line;
        bool coated, whole;
    };
    /// Whole windows are drafted of three builds of a frame: the first spacer's, coated and bare,
    /// and the coated one of the spacer that differs most. The others follow by their jambs.
    Draft next_draft() const;
    void draft_frame();

    std::vector<GlassChoice> glasses_;
    std::vector<std::vector<FrameLine>> frames_; ///< with their spacers
    std::size_t frame_ = 0;                      ///< in hand
    std::vector<Drafted> drafts_;                ///< of that one
    std::optional<Rater> rater_;                 ///< of the draft in hand
};

/// The build of a line with this glass, at the rating's size.
opening::Opening label_build(const FrameLine& line, const GlassChoice& glass, double knob,
                             double thickness_m);

/// Whole-window limits of the space.
struct Limits {
    Reach u, shgc, light;
};
Limits limits(const SearchSpace& space);

} // namespace shimlight::assess
