// SPDX-License-Identifier: MIT
// A dot, a thin leader, a bold value, a word; placed where they cover nothing.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

#include <functional>
#include <string>
#include <vector>

namespace shimlight::view {

struct Callout {
    ImVec2 at;         ///< what it points at
    std::string value; ///< bold
    std::string word;
    ImU32 colour = 0; ///< of the value
    /// With a key the value opens its card; `id` names its node.
    std::string_view key = {};
    std::string id = {};
    Shown of = Shown::today;
};

/// Finds places for labels in `area`, avoiding boxes already taken and whatever `is_ink` says is
/// drawing. One callout that finds no place is left out: fewer on a small picture.
class CalloutPlacer {
  public:
    CalloutPlacer(Box area, std::function<bool(ImVec2)> is_ink)
        : area_(area), is_ink_(std::move(is_ink)) {}

    /// Keeps labels away from this box.
    void reserve(Box box) { taken_.push_back(box); }
    /// Draws the callout where it costs least; false when there was no room.
    bool place(Ui& ui, const Callout& callout);
    /// Where a finger opens the cards of the placed callouts: as large as it needs, and between two
    /// the nearer one's. After the last has been placed.
    void listen(Ui& ui);

  private:
    Box area_;
    std::function<bool(ImVec2)> is_ink_;
    struct Leader {
        ImVec2 from, to;
    };
    struct Target {
        Box label;
        std::string_view key;
        std::string id;
        Shown of;
    };
    std::vector<Target> targets_;
    std::vector<Box> taken_;
    std::vector<Leader> leaders_;
    float cost(Box label, ImVec2 at, float least) const;
    float tangle(Box label, Leader own) const;
};

} // namespace shimlight::view
