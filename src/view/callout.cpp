// SPDX-License-Identifier: MIT
#include "view/callout.hpp"

#include "view/why.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace shimlight::view {
namespace {

constexpr std::array<float, 5> reach_px{26, 44, 68, 100, 140}; // leader lengths tried
constexpr int directions = 24;
constexpr float impossible = 1e9f;
constexpr float ink_cost = 60;       // for each sample point of the label that lies on the drawing
constexpr float leader_cost = 14;    // for each sample point of the leader that does
constexpr float tangle_cost = 110;   // for each leader crossed or label run through
constexpr float bearable_cost = 240; // a label worse than this is left out

bool overlap(const Box& a, const Box& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// Which side of the line a → b a point lies on.
float side(ImVec2 a, ImVec2 b, ImVec2 p) {
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

bool cross(ImVec2 a, ImVec2 b, ImVec2 c, ImVec2 d) {
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/// Whether a leader runs through a box.
bool through(ImVec2 a, ImVec2 b, const Box& box) {
    return box.contains(b) || cross(a, b, box.min(), box.max()) ||
           cross(a, b, {box.x, box.bottom()}, {box.right(), box.y});
}

/// Label box whose nearest edge centre is the leader's end.
Box label_at(ImVec2 end, ImVec2 size, float dx) {
    const float x = dx >= 0 ? end.x + 3 : end.x - 3 - size.x;
    return {x, end.y - size.y / 2, size.x, size.y};
}

} // namespace

/// Of a label there, or anything from `least` on when it costs more than that.
float CalloutPlacer::cost(Box label, ImVec2 at, float least) const {
    const bool inside = label.x >= area_.x + 4 && label.right() <= area_.right() - 4 &&
                        label.y >= area_.y + 4 && label.bottom() <= area_.bottom() - 4;
    if (!inside) return impossible;
    for (const Box& box : taken_)
        if (overlap({label.x - 3, label.y - 2, label.w + 6, label.h + 4}, box)) return impossible;
    float total = std::hypot(label.centre().x - at.x, label.centre().y - at.y) * 0.2f;
    for (int i = 0; i <= 4 && total < least; ++i)
        for (int j = 0; j <= 2; ++j) {
            const ImVec2 sample{label.x + label.w * static_cast<float>(i) / 4,
                                label.y + label.h * static_cast<float>(j) / 2};
            if (is_ink_(sample)) total += ink_cost;
        }
    const ImVec2 near{std::clamp(at.x, label.x, label.right()), label.centre().y};
    for (int i = 1; i <= 6 && total < least; ++i) {
        const float k = static_cast<float>(i) / 6;
        if (is_ink_({at.x + (near.x - at.x) * k, at.y + (near.y - at.y) * k})) total += leader_cost;
    }
    return total;
}

/// What crossing the leaders and labels that are there already costs.
float CalloutPlacer::tangle(Box label, Leader own) const {
    float total = 0;
    for (const Leader& other : leaders_) {
        if (cross(own.from, own.to, other.from, other.to)) total += tangle_cost;
        if (through(other.from, other.to, label)) total += tangle_cost;
    }
    for (const Box& box : taken_)
        if (!box.contains(own.from) && through(own.from, own.to, box)) total += tangle_cost;
    return total;
}

bool CalloutPlacer::place(Ui& ui, const Callout& c) {
    ImFont* bold = ui.platform.fonts.strong;
    ImFont* small = ui.platform.fonts.small;
    const ImVec2 value = text_size(ui, bold, c.value), word = text_size(ui, small, c.word);
    const ImVec2 size{value.x + (c.word.empty() ? 0 : 5 + word.x), std::max(value.y, word.y)};
    float best_cost = impossible;
    Box best;
    ImVec2 best_end;
    for (const float reach : reach_px)
        for (int d = 0; d < directions; ++d) {
            const float angle = 2 * std::numbers::pi_v<float> * static_cast<float>(d) / directions;
            const float dx = std::cos(angle), dy = std::sin(angle);
            if (std::fabs(dx) < 0.2f) continue;
            const ImVec2 end{c.at.x + dx * reach, c.at.y + dy * reach};
            const Box label = label_at(end, size, dx);
            float now = 6 * std::fabs(dy);
            now += cost(label, c.at, best_cost - now);
            if (now >= best_cost) continue;
            now += tangle(label, {c.at, end});
            if (now >= best_cost) continue;
            best_cost = now;
            best = label;
            best_end = end;
        }
    if (best_cost >= bearable_cost) return false;
    const Theme& t = ui.theme;
    fill(ui, {best.x - 3, best.y - 1, best.w + 6, best.h + 2}, t.halo, 4);
    ui.list->AddLine(c.at, best_end, t.ink, 1);
    ui.list->AddCircleFilled(c.at, 3.5f, t.paper);
    ui.list->AddCircleFilled(c.at, 2.5f, t.ink);
    text(ui, bold, {best.x, best.centre().y - value.y / 2}, c.colour ? c.colour : t.ink, c.value);
    text(ui, small, {best.x + value.x + 5, best.centre().y - word.y / 2 + 1}, t.ink, c.word);
    leaders_.push_back({c.at, best_end});
    taken_.push_back({best.x - 4, best.y - 3, best.w + 8, best.h + 6});
    if (!c.key.empty()) {
        figure(ui, c.id, best, c.word, c.value, c.key, c.of);
        targets_.push_back({best, c.key, c.id, c.of});
    }
    return true;
}

void CalloutPlacer::listen(Ui& ui) {
    const ImVec2 at = ImGui::GetIO().MousePos;
    const Target* nearest = nullptr;
    Box reached;
    float least = impossible;
    for (const Target& target : targets_) {
        const Box& l = target.label;
        const float w = std::max(l.w + 8, touch_px), h = std::max(l.h + 8, touch_px);
        const Box grown{l.centre().x - w / 2, l.centre().y - h / 2, w, h};
        const float away = std::hypot(at.x - std::clamp(at.x, l.x, l.right()),
                                      at.y - std::clamp(at.y, l.y, l.bottom()));
        if (!grown.contains(at) || away >= least) continue;
        least = away;
        nearest = &target;
        reached = grown;
    }
    const bool on_chips = at.y < area_.y + touch_px + 4; // they lie over the picture
    if (nearest && area_.contains(at) && !on_chips)
        figure_touch(ui, nearest->id, reached, nearest->key, nearest->of);
}

} // namespace shimlight::view
