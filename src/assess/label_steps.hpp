// SPDX-License-Identifier: MIT
// A label looked up in steps of at most one section, for a screen that must not stand still.
#pragma once

#include "assess/label_search.hpp"

#include <optional>
#include <vector>

namespace shimlight::assess {

/// read_label_in() in steps. The space must outlive it and not change.
class BuildSearch {
  public:
    BuildSearch(const SearchSpace& space, const Label& label, int most_builds);
    bool step(); ///< false: nothing is left to do
    bool busy() const { return tuning_.has_value(); }
    const LabelAnswer& answer() const { return answer_; } ///< whole once it is not busy
    double share_done() const {
        return static_cast<double>(answer_.builds.size()) / static_cast<double>(most_builds_);
    }

  private:
    void next();
    void sort_builds();
    void finish();

    Label label_;
    std::size_t most_builds_;
    LabelAnswer answer_;
    std::vector<Candidate> all_;
    std::size_t at_ = 0;                          ///< of them, the next one
    std::vector<const Candidate*> taken_, tried_; ///< those that match; all
    std::vector<LabelBuild> near_;                ///< tuned, but no match
    std::optional<Tuning> tuning_;                ///< of the candidate in hand
};

/// read_label() in steps.
class LabelSearch {
  public:
    explicit LabelSearch(const Label& label, int most_builds = 4);
    LabelSearch(const LabelSearch&) = delete;
    LabelSearch& operator=(const LabelSearch&) = delete;
    /// Another label: of the same frame and panes it takes half the time.
    void ask(const Label& label);
    bool step();                       ///< false: nothing is left to do
    const LabelAnswer* answer() const; ///< nullptr until then
    double share_done() const;         ///< 0…1, roughly

  private:
    Label label_;
    int most_builds_;
    SpaceSearch space_;
    std::optional<BuildSearch> builds_;
};

} // namespace shimlight::assess
