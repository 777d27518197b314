// SPDX-License-Identifier: MIT
#include "view/callout.hpp"

#include "view/why.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <type_traits>

namespace shimlight::view {
namespace {

/// Of numbers alone.
template <class T> bool alike(const std::vector<T>& a, const std::vector<T>& b) {
    static_assert(std::is_trivially_copyable_v<T> && sizeof(T) % sizeof(float) == 0);
    return a.size() == b.size() &&
           (a.empty() || std::memcmp(a.data(), b.data(), a.size() * sizeof(T)) == 0);
}

constexpr float one_dot_px = 4;   // nearer than this they point at the same place
constexpr float apart_px = 11;    // farther than this two dots are two to the eye
constexpr float dot_reach_px = 5; // around what a callout points at
constexpr float word_gap_px = 5;
constexpr float below_px = 15; // a word below its value

constexpr float least_pitch_px = 24; // of rows that a finger tells apart (WCAG 2.2, 2.5.8)

float row_px(const Ui& ui, std::size_t rows) {
    const float alone = text_size(ui, ui.platform.fonts.strong, "0").y + 2;
    return rows > 1 ? std::max(alone, least_pitch_px) : alone;
}

float value_px(const Ui& ui, const Callout& c) {
    return text_size(ui, ui.platform.fonts.strong, c.value).x;
}

float word_px(const Ui& ui, const Callout& c) {
    return c.word.empty() ? 0 : word_gap_px + text_size(ui, ui.platform.fonts.small, c.word).x;
}

/// Of the first callouts of a group, one under the other.
ImVec2 size_of(const Ui& ui, const std::vector<Callout>& group, LabelShape shape) {
    const auto& [rows, stacked] = shape;
    if (stacked)
        return {std::max(value_px(ui, group[0]), word_px(ui, group[0]) - word_gap_px),
                row_px(ui, 1) + below_px};
    ImVec2 size{0, row_px(ui, rows) * static_cast<float>(rows)};
    for (std::size_t i = 0; i < rows; ++i)
        size.x = std::max(size.x, value_px(ui, group[i]) + word_px(ui, group[i]));
    return size;
}

/// The places that labels of these names had.
std::vector<std::optional<LabelPlace>> places_of(const std::vector<std::string>& names,
                                                 const PlacedBefore& before) {
    std::vector<std::optional<LabelPlace>> places(names.size());
    for (std::size_t i = 0; i < names.size(); ++i)
        for (std::size_t j = 0; j < before.names.size(); ++j)
            if (before.names[j] == names[i]) places[i] = before.places[j];
    return places;
}

/// The shape that a label had, as far as it is more than its rows.
LabelShape shape_of(const std::vector<Callout>& group, const PlacedBefore& before) {
    for (std::size_t j = 0; j < before.names.size(); ++j)
        if (before.names[j] == group.front().id && before.places[j] && before.shapes[j].stacked)
            return {1, true};
    return {group.size(), false};
}

} // namespace

void draw_dot(Ui& ui, ImVec2 at, float opacity) {
    ui.list->AddCircleFilled(at, 4.2f, faded(ui.theme.paper, opacity));
    ui.list->AddCircleFilled(at, 2.8f, faded(ui.theme.ink, opacity));
}

void draw_leader(Ui& ui, ImVec2 dot, ImVec2 end, float opacity) {
    ui.list->AddLine(dot, end, faded(ui.theme.paper, 0.85f * opacity), 4);
    ui.list->AddLine(dot, end, faded(ui.theme.ink, opacity), 1.3f);
    draw_dot(ui, dot, opacity);
}

void CalloutPlacer::avoid(const std::vector<ImVec2>& way) {
    for (std::size_t i = 0; i + 1 < way.size(); ++i)
        ground_.ways.push_back({way[i], way[i + 1]});
}

bool CalloutPlacer::has_dot(ImVec2 at) const {
    return std::any_of(groups_.begin(), groups_.end(), [at](const std::vector<Callout>& group) {
        const ImVec2 dot = group.front().at;
        return std::hypot(dot.x - at.x, dot.y - at.y) < apart_px;
    });
}

bool CalloutPlacer::on_dot(const Box& box) const {
    const Box around{box.x - dot_reach_px, box.y - dot_reach_px, box.w + 2 * dot_reach_px,
                     box.h + 2 * dot_reach_px};
    return std::any_of(groups_.begin(), groups_.end(), [&](const std::vector<Callout>& group) {
        return around.contains(group.front().at);
    });
}

bool CalloutPlacer::is_taken(const Box& box) const {
    const auto meets = [&box](const Box& other) { return overlap(other, box); };
    const auto runs_in = [&box](const Leader& line) { return through(line, box); };
    return std::any_of(ground_.taken.begin(), ground_.taken.end(), meets) ||
           std::any_of(ground_.leaders.begin(), ground_.leaders.end(), runs_in) ||
           std::any_of(ground_.ways.begin(), ground_.ways.end(), runs_in);
}

void CalloutPlacer::add(Callout callout) {
    for (std::vector<Callout>& group : groups_) {
        const ImVec2 dot = group.front().at;
        if (std::hypot(dot.x - callout.at.x, dot.y - callout.at.y) < one_dot_px)
            return group.push_back(std::move(callout));
    }
    groups_.push_back({std::move(callout)});
}

/// A group that finds no room tries with a row less, the last one with its word below,
/// and then anywhere.
void CalloutPlacer::place(const Ui& ui, PlacedBefore& at,
                          const std::vector<std::optional<LabelPlace>>& kept) const {
    std::vector<Label> labels = at.labels;
    for (bool again = true; again;) {
        at.places = place_labels(ground_, labels, kept);
        again = false;
        for (std::size_t i = 0; i < groups_.size(); ++i) {
            LabelShape& shape = at.shapes[i];
            if (at.places[i] || shape.stacked) continue;
            shape = shape.rows > 1 ? LabelShape{shape.rows - 1, false} : LabelShape{1, true};
            labels[i].size = size_of(ui, groups_[i], shape);
            again = true;
        }
    }
    const auto missing = [](const std::vector<std::optional<LabelPlace>>& places) {
        return std::count(places.begin(), places.end(), std::nullopt);
    };
    if (missing(at.places) == 0) return;
    auto closer = place_labels(ground_, labels, kept, Search::everywhere);
    if (missing(closer) < missing(at.places)) at.places = std::move(closer);
}

void CalloutPlacer::draw(Ui& ui, std::shared_ptr<const void> drawing, PlacedBefore& before,
                         Placing placing) {
    const bool keep = placing == Placing::keeping;
    std::vector<Label> labels;
    std::vector<LabelShape> shapes;
    std::vector<std::string> names;
    for (const std::vector<Callout>& group : groups_) {
        names.push_back(group.front().id);
        shapes.push_back(keep ? shape_of(group, before) : LabelShape{group.size(), false});
        labels.push_back({group.front().at, size_of(ui, group, shapes.back())});
    }
    const Ground& was = before.ground;
    const bool same = (keep || !before.kept) && before.drawing == drawing &&
                      alike(before.labels, labels) &&
                      alike(std::vector{was.area}, std::vector{ground_.area}) &&
                      alike(was.taken, ground_.taken) && alike(was.leaders, ground_.leaders) &&
                      alike(was.ways, ground_.ways);
    if (!same) {
        const auto kept = keep ? places_of(names, before) : decltype(before.places){};
        before = {std::move(drawing), ground_, std::move(labels), std::move(shapes), {},
                  std::move(names),   keep};
        before.ground.is_ink = nullptr; // which holds on to more than it may
        place(ui, before, kept);
    }
    for (const std::optional<LabelPlace>& one : before.places)
        if (one) draw_leader(ui, one->leader.from, one->leader.to);
    for (std::size_t i = 0; i < groups_.size(); ++i)
        if (before.places[i]) draw_group(ui, groups_[i], before.shapes[i], *before.places[i]);
}

void CalloutPlacer::draw_group(Ui& ui, const std::vector<Callout>& group, LabelShape shape,
                               const LabelPlace& place) {
    const Fonts& fonts = ui.platform.fonts;
    const Theme& t = ui.theme;
    const Box& all = place.box;
    const auto& [rows, stacked] = shape;
    const float high = stacked ? all.h : row_px(ui, rows);
    const float drop = stacked ? 0 : (high - row_px(ui, 1)) / 2;
    fill(ui, {all.x - 3, all.y - 1, all.w + 6, all.h + 2}, t.halo, 4);
    const bool to_left = place.leader.to.x > all.right(); // then rows end at the leader
    for (std::size_t i = 0; i < rows; ++i) {
        const Callout& c = group[i];
        const float own = value_px(ui, c), w = stacked ? all.w : own + word_px(ui, c);
        const Box row{to_left ? all.right() - w : all.x, all.y + high * static_cast<float>(i), w,
                      high};
        const ImVec2 word = stacked ? ImVec2{row.x, row.bottom() - below_px - 1}
                                    : ImVec2{row.x + own + word_gap_px, row.y + drop + 2};
        text(ui, fonts.strong, {row.x, row.y + drop}, c.colour ? c.colour : t.ink, c.value);
        text(ui, fonts.small, word, t.ink, c.word);
        if (c.key.empty()) continue;
        // By ear nothing else tells the two pictures' callouts apart.
        const char* whose = c.of == Shown::today ? ", today" : ", remedy";
        figure(ui, c.id, row, c.word + whose, c.value, c.key, c.of);
        targets_.push_back({row, c.key, c.id, c.of});
    }
}

void CalloutPlacer::listen(Ui& ui) {
    const ImVec2 at = ImGui::GetIO().MousePos;
    const Box& area = ground_.area;
    const Target* nearest = nullptr;
    Box reached;
    float least = 1e9f;
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
    const bool on_chips = at.y < area.y + touch_px + 4; // they lie over the picture
    if (nearest && area.contains(at) && !on_chips)
        figure_touch(ui, nearest->id, reached, nearest->key, nearest->of);
}

} // namespace shimlight::view
