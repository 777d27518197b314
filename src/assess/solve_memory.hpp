// SPDX-License-Identifier: MIT
// The cuts of one case with their solutions. What a lever did not touch is recognised by its
// painting: the same painting has the same field.
#pragma once

#include "assess/assessment.hpp"
#include "section/gradual_solve.hpp"
#include "section/kept_section.hpp"

#include <memory>
#include <optional>
#include <string_view>

namespace shimlight::assess {

/// Whether the wanted cut is one of a lever's way, one of many around a first, or stays.
enum class Pace { moving, around, resting };

/// One cut: what is wanted, what is solved, and what is read from the solution.
class Slot {
  public:
    Slot() = default;
    Slot(opening::Position position, opening::Surroundings surroundings)
        : position_(position), surroundings_(surroundings) {}

    void want(const opening::Case& c, const physics::GlazingResult& glass);
    /// Solved as wanted now, at `least` or better; or refused by the solver. While a lever moves,
    /// an answer that depends on where it came from will do.
    bool fresh(section::Accuracy least, Pace pace) const;
    /// One section solve towards it.
    void solve(section::Accuracy accuracy, Pace pace);
    /// Likewise at rest, one grid of it or the reading of its answer: call it until it is fresh.
    void step(section::Accuracy accuracy);
    /// The heat flows of another, where what is wanted here is the other's cut upside down. Both
    /// must be of a unit alone. Returns whether it is.
    bool take_mirrored(const Slot& other);

    opening::Position position() const { return position_; }
    /// Of a unit's own cut only the heat flows are kept.
    const std::shared_ptr<const SolvedCut>& solved() const { return solved_; }
    section::Accuracy accuracy() const { return accuracy_; }
    bool failed() const { return failed_; }
    /// From the cut's wall end to the sight line.
    double sight_m() const { return sight_m_; }
    /// Heat per metre and kelvin beyond that of the visible glass and of the undisturbed wall.
    double excess_w_mk() const { return excess_w_mk_; }
    /// Heat per metre and kelvin through the inside faces of frame and sash, of the glass's edge.
    double frame_w_mk() const { return frame_w_mk_; }
    double edge_w_mk() const { return edge_w_mk_; }
    /// Heat that creeping air takes from wood and wall, W per metre; 0 when none flows.
    double stream_heat_w_m() const;
    /// Temperature of a stream at the end of its way; empty when none flows.
    std::optional<double> outlet_c(std::string_view stream) const;

  private:
    void finish(Result<section::Field> result, section::Accuracy accuracy);
    void read_excess();
    /// A unit's own cut is only counted.
    bool is_shown() const { return surroundings_ == opening::Surroundings::wall; }

    opening::Position position_ = opening::Position::sill;
    opening::Surroundings surroundings_ = opening::Surroundings::wall;
    opening::Cut wanted_;
    double glass_u_w_m2k_ = 0, undisturbed_w_mk_ = 0;

    std::shared_ptr<const SolvedCut> solved_;
    section::Accuracy accuracy_ = section::Accuracy::draft;
    bool failed_ = false;
    section::KeptSection kept_;                  ///< of a moving lever
    std::optional<section::GradualSolve> begun_; ///< of the wanted painting
    section::Accuracy begun_at_ = section::Accuracy::draft;
    bool followed_ = false; ///< solved_ depends on the paintings before
    double sight_m_ = 0, excess_w_mk_ = 0, frame_w_mk_ = 0, edge_w_mk_ = 0;
};

} // namespace shimlight::assess
