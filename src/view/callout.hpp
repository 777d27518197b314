// SPDX-License-Identifier: MIT
// A dot, a thin leader, a bold value, a word; placed where they cover nothing.
#pragma once

#include "view/leaders.hpp"
#include "view/session.hpp"
#include "view/ui.hpp"

#include <functional>
#include <memory>
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

/// A leader on any ground: its ink lies in a casing of paper. The dot is what it points at.
void draw_leader(Ui& ui, ImVec2 dot, ImVec2 end, float opacity = 1);
void draw_dot(Ui& ui, ImVec2 at, float opacity = 1);

/// How a label is written: values and words in rows, or the one word below the one value where
/// rows are too wide.
struct LabelShape {
    std::size_t rows = 1;
    bool stacked = false;
};

/// What was placed in the frame before: a film's frames ask for the same again and again, and a
/// lever's ask for nearly the same.
struct PlacedBefore {
    std::shared_ptr<const void> drawing; ///< what is_ink tells of
    Ground ground;
    std::vector<Label> labels;
    std::vector<LabelShape> shapes;
    std::vector<std::optional<LabelPlace>> places;
    std::vector<std::string> names; ///< of the labels, by what they tell
    bool kept = false;              ///< labels were held where they had been
};

/// Whether labels look for the best places, or stay where they are as long as they can.
enum class Placing { afresh, keeping };

/// Finds places for labels in `area`, avoiding boxes already taken and whatever `is_ink` says is
/// drawing. Callouts of one place share a dot and a leader. What finds no room is left out: fewer
/// on a small picture.
class CalloutPlacer {
  public:
    CalloutPlacer(Box area, std::function<bool(ImVec2)> is_ink) {
        ground_.area = area;
        ground_.is_ink = std::move(is_ink);
    }

    /// Keeps labels and leaders away from this box.
    void reserve(Box box) { ground_.taken.push_back(box); }
    /// A leader that is drawn already.
    void reserve(const Leader& leader) { ground_.leaders.push_back(leader); }
    /// Air on its way: labels leave it in sight.
    void avoid(const std::vector<ImVec2>& way);
    /// The first callouts find room first.
    void add(Callout callout);
    /// Whether a callout points there already, or so near that two dots would be one to the eye.
    bool has_dot(ImVec2 at) const;
    /// Whether the dot of a callout would lie in this box.
    bool on_dot(const Box& box) const;
    bool is_taken(const Box& box) const;
    const Ground& ground() const { return ground_; }
    /// Draws all callouts where they cost least together, afresh or as far as those that keep their
    /// places let them. `drawing` is what is_ink tells of.
    void draw(Ui& ui, std::shared_ptr<const void> drawing, PlacedBefore& before,
              Placing placing = Placing::afresh);
    /// Where a finger opens the cards of the placed callouts: as large as it needs, and between two
    /// the nearer one's. After they have been drawn.
    void listen(Ui& ui);

  private:
    struct Target {
        Box label;
        std::string_view key;
        std::string id;
        Shown of;
    };
    Ground ground_;
    std::vector<std::vector<Callout>> groups_; ///< by the dot they share
    std::vector<Target> targets_;

    void place(const Ui& ui, PlacedBefore& at,
               const std::vector<std::optional<LabelPlace>>& kept) const;
    void draw_group(Ui& ui, const std::vector<Callout>& group, LabelShape shape,
                    const LabelPlace& place);
};

} // namespace shimlight::view
