// SPDX-License-Identifier: MIT
// A temperature measured on frame, casing or at the edge of the glass beside the computed one, and
// what would explain a difference: every candidate is a section solved at `draft`. A screen takes
// it section by section.
#pragma once

#include "assess/explanation.hpp"
#include "assess/surfaces.hpp"

#include <optional>

namespace shimlight::assess {

/// So many sections at most are solved for one reading.
inline constexpr int most_part_solves = 20;

struct PartReading : SurfaceReading {
    opening::Position position = opening::Position::sill; ///< of the cut it is computed in
    int solves = 0;
};

/// A reading of the coldest place of glass_edge, frame or casing. The cut that has it is found
/// first; candidates are solved in that cut alone. What moves the part by less than 0.1 K there (a
/// draft's own error) is left out. `infrared`, if there is one, lets the emissivity be accused too.
PartReading read_part(const opening::Case& c, opening::Part part, const Measured& measured,
                      const physics::InfraredReading* infrared, bool fahrenheit);

/// The coldest place of each part of a window, from drafts of its cuts, one after the other.
class DraftParts {
  public:
    explicit DraftParts(const opening::Case& c) : c_(c) {}
    const opening::Case& of() const { return c_; }
    bool done() const { return next_ == opening::position_count; }
    void step(); ///< solves one cut
    /// Once done; a part that no cut has, or none that can be solved, is not among them.
    const std::vector<PartSurface>& parts() const { return parts_; }

  private:
    opening::Case c_;
    int next_ = 0;
    SolvedCuts cuts_;
    std::vector<PartSurface> parts_;
};

/// `read_part` in steps. Drafts that are there already are not solved again.
class PartReader {
  public:
    PartReader(DraftParts drafts, opening::Part part, const Measured& measured,
               const physics::InfraredReading* infrared, bool fahrenheit);
    /// Goes on, with so many sections solved at most; true once it is done.
    bool step(int most_solves);
    bool done() const { return done_; }
    const PartReading& reading() const { return reading_; } ///< whole once done
    opening::Part part() const { return part_; }

  private:
    struct Point {
        double value, c;
    };
    /// Where one candidate brings the part nearest to what was measured, value by value: at the end
    /// that should move it there, at the other end if that one moves it away, or between where it
    /// is met on the way.
    struct Search {
        Search(Point assumed, double likely, double other, double target_c);
        void found(double c); ///< the part's temperature with `value`
        bool done = false;
        double value;        ///< to be solved next
        Point nearest{0, 0}; ///< once done

      private:
        Point known_, end_{0, 0};
        double likely_, other_, target_c_;
        int steps_ = 0; ///< of the false position
        enum class At { likely, other, between } at_ = At::likely;

        double apart_k(const Point& p) const;
        bool colder(const Point& p) const { return p.c < target_c_; }
        void between();
        void aim();
    };

    DraftParts drafts_;
    opening::Part part_;
    Measured measured_;
    std::optional<physics::InfraredReading> infrared_;
    bool fahrenheit_;
    PartReading reading_;
    std::size_t candidate_ = 0; ///< that is being tried, or comes next
    std::optional<Search> search_;
    bool compared_ = false, done_ = false;

    void compare();
    void begin_search();
    void solve();
    void take();
    void finish();
};

} // namespace shimlight::assess
