// SPDX-License-Identifier: MIT
#include "view/leaders.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::view {
namespace {

constexpr float apart_x_px = 5, apart_y_px = 4;      // between two labels
constexpr float around_x_px = 3, around_y_px = 2;    // between a label and what is drawn
constexpr float dot_px = 5;                          // around what another label points at
constexpr float ink_cost = 30, ink_step_px = 3;      // for each sample of the label on the drawing
constexpr float leader_cost = 4, leader_step_px = 8; // for each step of the leader that does
constexpr float length_cost = 0.3f;                  // for each px of the leader
constexpr float way_cost = 70;                       // for each way of air that the leader crosses
constexpr float missing_cost = 400, missing_first_cost = 60; // a label less; more for the first
constexpr int rounds = 4;

struct Places {
    std::vector<float> reach_px; ///< lengths of leaders
    int directions = 36;
    float bearable_cost = 240; ///< a place worse than this is none
};

const Places usual{{20, 32, 48, 68, 92, 124, 160, 200}};
const Places everywhere{
    {14, 20, 26, 32, 40, 48, 58, 68, 80, 92, 108, 124, 142, 160, 180, 200}, 72, 420};

/// Which side of the line a → b a point lies on.
float side(ImVec2 a, ImVec2 b, ImVec2 p) {
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

Box grown(const Box& b, float x, float y) {
    return {b.x - x, b.y - y, b.w + 2 * x, b.h + 2 * y};
}

Box dot_box(ImVec2 at) {
    return {at.x - dot_px, at.y - dot_px, 2 * dot_px, 2 * dot_px};
}

bool is_same(ImVec2 a, ImVec2 b) {
    return std::hypot(a.x - b.x, a.y - b.y) < 1;
}

struct Candidate {
    LabelPlace place;
    float cost = 0;
};

/// What the drawing costs a label there, and its leader; counted no further than `most`.
float ink_under(const Ground& g, const Label& label, const LabelPlace& p, float most) {
    float total = 0;
    // Close enough that no pane slips through between two samples.
    const int columns = std::max(1, static_cast<int>(p.box.w / ink_step_px));
    for (int i = 0; i <= columns && total < most; ++i)
        for (int j = 0; j <= 2; ++j)
            if (g.is_ink({p.box.x + p.box.w * static_cast<float>(i) / static_cast<float>(columns),
                          p.box.y + p.box.h * static_cast<float>(j) / 2}))
                total += ink_cost;
    const float dx = p.leader.to.x - label.at.x, dy = p.leader.to.y - label.at.y;
    const int steps = std::max(1, static_cast<int>(std::hypot(dx, dy) / leader_step_px));
    for (int i = 1; i <= steps; ++i) {
        const float k = static_cast<float>(i) / static_cast<float>(steps);
        if (g.is_ink({label.at.x + dx * k, label.at.y + dy * k})) total += leader_cost;
    }
    return total;
}

/// Whether label and leader keep off everything that is there already.
bool is_free(const Ground& g, const std::vector<Label>& labels, const LabelPlace& p) {
    const Box& a = g.area;
    const Box& b = p.box;
    if (b.x < a.x + 4 || b.right() > a.right() - 4 || b.y < a.y + 4 || b.bottom() > a.bottom() - 4)
        return false;
    const Box around = grown(b, around_x_px, around_y_px);
    for (const Box& box : g.taken)
        if (overlap(around, box) || (!box.contains(p.leader.from) && through(p.leader, box)))
            return false;
    for (const Leader& line : g.leaders)
        if (through(line, around) || crossing(line, p.leader)) return false;
    for (const Leader& way : g.ways)
        if (through(way, around)) return false;
    for (const Label& other : labels) {
        const Box dot = dot_box(other.at);
        if (is_same(other.at, p.leader.from)) {
            if (overlap(b, dot)) return false;
        } else if (overlap(around, dot) ||
                   (!dot.contains(p.leader.from) && through(p.leader, dot))) {
            return false;
        }
    }
    return true;
}

void try_place(const Ground& g, const std::vector<Label>& labels, const Label& label,
               LabelPlace place, float cost, float bearable_cost, std::vector<Candidate>& found) {
    if (!is_free(g, labels, place)) return;
    cost +=
        std::hypot(place.leader.to.x - label.at.x, place.leader.to.y - label.at.y) * length_cost;
    for (const Leader& way : g.ways)
        if (crossing(way, place.leader)) cost += way_cost;
    if (cost < bearable_cost) cost += ink_under(g, label, place, bearable_cost - cost);
    if (cost < bearable_cost) found.push_back({place, cost});
}

/// Everywhere a label could stand: beside its leader's end, or above or below a steep one.
std::vector<Candidate> candidates(const Ground& g, const std::vector<Label>& labels,
                                  const Label& label, const Places& search) {
    std::vector<Candidate> found;
    const float bearable = search.bearable_cost;
    const ImVec2 at = label.at, size = label.size;
    for (const float reach : search.reach_px)
        for (int d = 0; d < search.directions; ++d) {
            const float angle = 2 * std::numbers::pi_v<float> * static_cast<float>(d) /
                                static_cast<float>(search.directions);
            const float dx = std::cos(angle), dy = std::sin(angle);
            const ImVec2 end{at.x + dx * reach, at.y + dy * reach};
            const float steep = std::fabs(dy);
            if (std::fabs(dx) > 0.2f)
                try_place(
                    g, labels, label,
                    {{dx > 0 ? end.x + 3 : end.x - 3 - size.x, end.y - size.y / 2, size.x, size.y},
                     {at, end}},
                    6 * steep, bearable, found);
            if (steep > 0.8f)
                try_place(
                    g, labels, label,
                    {{end.x - size.x / 2, dy > 0 ? end.y + 1 : end.y - 1 - size.y, size.x, size.y},
                     {at, end}},
                    8, bearable, found);
        }
    std::sort(found.begin(), found.end(),
              [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
    return found;
}

/// A box of this size where the other one stands at the end of its leader.
Box at_end(const LabelPlace& was, ImVec2 end, ImVec2 size) {
    const Box& b = was.box;
    const ImVec2 to = was.leader.to;
    if (to.x < b.x) return {end.x + b.x - to.x, end.y - size.y / 2, size.x, size.y};
    if (to.x > b.right())
        return {end.x + b.right() - to.x - size.x, end.y - size.y / 2, size.x, size.y};
    const bool below = to.y < b.y;
    return {end.x - size.x / 2, below ? end.y + b.y - to.y : end.y + b.bottom() - to.y - size.y,
            size.x, size.y};
}

/// Where a label was, its leader drawn to the dot of now; else as far from the dot as it was.
std::optional<LabelPlace> still_free(const Ground& g, const std::vector<Label>& labels,
                                     const Label& label, const LabelPlace& was) {
    const ImVec2 to = was.leader.to;
    const ImVec2 along{to.x + label.at.x - was.leader.from.x,
                       to.y + label.at.y - was.leader.from.y};
    std::vector<Candidate> found;
    for (const ImVec2 end : {to, along}) {
        const LabelPlace place{at_end(was, end, label.size), {label.at, end}};
        const bool longest =
            std::hypot(end.x - label.at.x, end.y - label.at.y) > everywhere.reach_px.back();
        if (!longest && !through(place.leader, place.box))
            try_place(g, labels, label, place, 0, everywhere.bearable_cost, found);
        if (!found.empty()) return place;
    }
    return {};
}

bool in_conflict(const LabelPlace& a, const LabelPlace& b) {
    return overlap(grown(a.box, apart_x_px, apart_y_px), b.box) || crossing(a.leader, b.leader) ||
           through(a.leader, grown(b.box, around_x_px, around_y_px)) ||
           through(b.leader, grown(a.box, around_x_px, around_y_px));
}

/// Chooses a place for each label so that none is in another's way, at the least cost.
class Choice {
  public:
    explicit Choice(std::vector<std::vector<Candidate>> all)
        : all_(std::move(all)), chosen_(all_.size(), -1) {}

    void settle() {
        for (std::size_t i = 0; i < all_.size(); ++i)
            chosen_[i] = first_free(i);
        for (int round = 0; round < rounds; ++round) {
            bool better = false;
            for (std::size_t i = 0; i < all_.size(); ++i)
                better = improve(i) || better;
            if (!better) return;
        }
    }
    std::optional<LabelPlace> place(std::size_t i) const {
        if (chosen_[i] < 0) return {};
        return at(i).place;
    }

  private:
    std::vector<std::vector<Candidate>> all_;
    std::vector<int> chosen_; ///< -1: no room

    const Candidate& at(std::size_t i) const {
        return all_[i][static_cast<std::size_t>(chosen_[i])];
    }
    float cost(std::size_t i) const {
        const auto after = static_cast<float>(all_.size() - i);
        return chosen_[i] < 0 ? missing_cost + missing_first_cost * after : at(i).cost;
    }
    std::vector<std::size_t> in_the_way(std::size_t i, const LabelPlace& place) const {
        std::vector<std::size_t> found;
        for (std::size_t j = 0; j < all_.size(); ++j)
            if (j != i && chosen_[j] >= 0 && in_conflict(at(j).place, place)) found.push_back(j);
        return found;
    }
    int first_free(std::size_t i) const {
        for (std::size_t c = 0; c < all_[i].size(); ++c)
            if (in_the_way(i, all_[i][c].place).empty()) return static_cast<int>(c);
        return -1;
    }
    /// A cheaper place for one label, though one or two others have to make way for it.
    bool improve(std::size_t i) {
        for (std::size_t c = 0; c < all_[i].size() && all_[i][c].cost < cost(i); ++c) {
            const auto way = in_the_way(i, all_[i][c].place);
            if (way.size() > 2) continue;
            const std::vector<int> before = chosen_;
            float change = all_[i][c].cost - cost(i);
            for (const std::size_t j : way)
                change -= cost(j);
            chosen_[i] = static_cast<int>(c);
            for (const std::size_t j : way)
                chosen_[j] = -1;
            for (const std::size_t j : way) {
                chosen_[j] = first_free(j);
                change += cost(j);
            }
            if (change < -0.01f) return true;
            chosen_ = before;
        }
        return false;
    }
};

} // namespace

bool overlap(const Box& a, const Box& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

bool crossing(const Leader& a, const Leader& b) {
    if (std::max(a.from.x, a.to.x) < std::min(b.from.x, b.to.x) ||
        std::max(b.from.x, b.to.x) < std::min(a.from.x, a.to.x) ||
        std::max(a.from.y, a.to.y) < std::min(b.from.y, b.to.y) ||
        std::max(b.from.y, b.to.y) < std::min(a.from.y, a.to.y))
        return false;
    return side(a.from, a.to, b.from) * side(a.from, a.to, b.to) < 0 &&
           side(b.from, b.to, a.from) * side(b.from, b.to, a.to) < 0;
}

bool through(const Leader& l, const Box& box) {
    if (std::max(l.from.x, l.to.x) < box.x || std::min(l.from.x, l.to.x) > box.right() ||
        std::max(l.from.y, l.to.y) < box.y || std::min(l.from.y, l.to.y) > box.bottom())
        return false;
    return box.contains(l.from) || box.contains(l.to) || crossing(l, {box.min(), box.max()}) ||
           crossing(l, {{box.x, box.bottom()}, {box.right(), box.y}});
}

namespace {

/// A label that stands is in the way of those that are still looked for.
void settle(Ground& ground, const LabelPlace& place) {
    ground.taken.push_back(grown(place.box, apart_x_px - around_x_px, apart_y_px - around_y_px));
    ground.leaders.push_back(place.leader);
}

} // namespace

std::vector<std::optional<LabelPlace>>
place_labels(const Ground& ground, const std::vector<Label>& labels,
             const std::vector<std::optional<LabelPlace>>& before, Search search) {
    std::vector<std::optional<LabelPlace>> places(labels.size());
    Ground left = ground;
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (before[i]) places[i] = still_free(left, labels, labels[i], *before[i]);
        if (places[i]) settle(left, *places[i]);
    }
    std::vector<std::vector<Candidate>> all(labels.size());
    for (std::size_t i = 0; i < labels.size(); ++i)
        if (!places[i])
            all[i] =
                candidates(left, labels, labels[i], search == Search::usual ? usual : everywhere);
    Choice choice(std::move(all));
    choice.settle();
    for (std::size_t i = 0; i < labels.size(); ++i)
        if (!places[i]) places[i] = choice.place(i);
    return places;
}

} // namespace shimlight::view
