// SPDX-License-Identifier: MIT
#include "view/levers_panel.hpp"

#include "view/layout.hpp"
#include "view/lever.hpp"
#include "view/lever_card.hpp"
#include "view/lever_groups.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace shimlight::view {
namespace {

using opening::Field;
using opening::Scope;

constexpr float head_px = 52;
constexpr float heading_px = touch_px;
constexpr float between_px = 8;
constexpr float two_columns_from_px = 600;

bool belongs_to_remedy(const Field& field, Shown shown) {
    return shown == Shown::remedy && field.scope == Scope::opening;
}

} // namespace

/// On a phone all but the first group are folded to start with.
bool LeversPanel::is_open(const Ui& ui, int group) const {
    const unsigned open = open_.value_or(is_phone(ui.platform) ? 1 : ~0u);
    return (open >> group & 1) != 0;
}

/// Groups one under the other; with two columns the second starts at the group past the middle.
LeversPanel::List LeversPanel::arrange(const Ui& ui, const opening::Case& c, int columns) const {
    List list;
    float whole = 0;
    const bool phone = is_phone(ui.platform);
    int index = 0;
    for (const LeverGroup& group : lever_groups(c)) {
        // On a phone the first lever stands right under the thumb, without a heading.
        if (!phone || index > 0)
            list.items.push_back({group.title, nullptr, index, 0, 0, heading_px});
        if (is_open(ui, index) || (phone && index == 0))
            for (const Field* field : group.fields)
                list.items.push_back({{}, field, index, 0, 0, lever_height_px + between_px});
        ++index;
    }
    for (const Item& item : list.items)
        whole += item.height_px;
    float y = 0, done = 0;
    int column = 0;
    for (Item& item : list.items) {
        if (column + 1 < columns && !item.heading.empty() && done >= whole / 2) {
            ++column;
            y = 0;
        }
        item.column = column;
        item.top_px = y;
        y += item.height_px;
        done += item.height_px;
        list.height_px = std::max(list.height_px, y);
    }
    return list;
}

/// A heading that folds and opens its group.
void LeversPanel::title(Ui& ui, const Item& item, Box box) {
    const std::string line(item.heading);
    const bool open = is_open(ui, item.group);
    MirrorNode node;
    node.id = "levers.fold." + std::to_string(item.group);
    node.role = Role::toggle;
    node.name = "Levers: " + line;
    node.on = open;
    put_in_place(ui, node, box);
    const std::string id = node.id;
    ui.mirror.add(std::move(node));
    note(ui, Role::heading, "levers." + line, {box.x, box.y + 8, box.w, 22}, line, "3");
    const Touch touch = touch_area(ui, id, box);
    text(ui, ui.platform.fonts.strong, {box.x, box.y + 12}, ui.theme.lever, line);
    const ImVec2 tip{box.right() - 12, box.centre().y};
    const float down = open ? -1 : 1; // opens downwards, folds upwards
    ui.list->AddTriangleFilled({tip.x - 6, tip.y - 3 * down}, {tip.x + 6, tip.y - 3 * down},
                               {tip.x, tip.y + 4 * down}, ui.theme.lever);
    focus_ring(ui, id, box, 4);
    if (!touch.pressed && !ui.mirror.pressed(id)) return;
    open_ = open_.value_or(is_phone(ui.platform) ? 1 : ~0u) ^ 1u << item.group;
    ui.wishes.another_frame = true;
}

float LeversPanel::head(Ui& ui, Session& session, Box box) {
    const house::OpeningRecord& record = session.record();
    std::vector<std::string> names;
    for (const auto& remedy : record.remedies)
        names.push_back(remedy.name);
    text(ui, ui.platform.fonts.small, {box.x, box.y + 16}, ui.theme.soft, "Remedy");
    const int chosen =
        choice(ui, "remedy.choice", {box.x + 58, box.y + 2, box.w - 58 - touch_px - 4, touch_px},
               "Remedy", names, record.chosen);
    if (chosen >= 0 && chosen < static_cast<int>(names.size()) && chosen != record.chosen) {
        house::House next = session.house();
        next.openings[static_cast<std::size_t>(next.selected)].chosen = chosen;
        session.edit(std::move(next));
        session.shown = Shown::remedy;
    }
    ButtonStyle style;
    style.look = ButtonLook::plain;
    style.sign = true;
    style.spoken = "Remedies: choose, make, change";
    if (button(ui, "remedies.open", {box.right() - touch_px, box.y + 2, touch_px, touch_px}, "…",
               style))
        session.choosing_remedy = true;
    return head_px;
}

bool LeversPanel::row(Ui& ui, Session& session, const Field& field, Box box, Shown shown) {
    const opening::Case today = session.today();
    const bool of_remedy = belongs_to_remedy(field, shown) && session.has_remedy();
    const opening::Case now = of_remedy ? session.remedy() : today;
    const Trade trade = trade_of(session.house());
    std::string was;
    if (of_remedy && std::fabs(field.get(today) - field.get(now)) > 1e-12)
        was = value_text(field, field.get(today), ui.units, trade);
    const auto moved = lever(ui, {field, now, was, trade}, box);
    if (ui.lever_card)
        ui.lever_card->listen(ui, session, field, of_remedy ? Shown::remedy : Shown::today, box);
    const double value = field.get(now);
    const bool at_limit = field.quantity != Quantity::choice &&
                          field.quantity != Quantity::yes_no && !field.limit_reason.empty() &&
                          (value <= field.min || value >= field.max);
    if (at_limit)
        text_fitted(ui, ui.platform.fonts.small, {box.x, box.y + lever_height_px - 10}, box.w,
                    ui.theme.lever, std::string(field.limit_reason));
    if (!moved || std::fabs(*moved - value) < 1e-12) return false;
    session.move(field, *moved, of_remedy ? Shown::remedy : Shown::today,
                 ui.gesture.down ? "lever." + std::string(field.key) : std::string());
    return true;
}

bool LeversPanel::draw(Ui& ui, Session& session, Box box) {
    const Shown shown = session.shown;
    ui.group = "levers";
    fill(ui, box, ui.theme.card);
    note(ui, Role::heading, "levers.title", {box.x + margin_px, box.y, box.w, 20}, "Levers", "2");
    const bool of_remedy = shown == Shown::remedy && session.has_remedy();
    const opening::Case c = of_remedy ? session.remedy() : session.today();
    const int columns = box.w >= two_columns_from_px ? 2 : 1;
    const List list = arrange(ui, c, columns);
    const float gutters = 2 * margin_px * static_cast<float>(columns);
    const float width = (box.w - gutters) / static_cast<float>(columns);
    const float top = scroll_.begin(ui, box, head_px + list.height_px + 12);
    // Where there is room for one lever alone, the remedy's choice comes after it.
    const bool tight = box.h < head_px + lever_height_px && !list.items.empty();
    const float head_y = tight ? list.items.front().height_px : 4;
    head(ui, session, {box.x + margin_px, top + head_y, width, head_px});
    bool moved = false;
    for (const Item& item : list.items) {
        const float x =
            box.x + margin_px + static_cast<float>(item.column) * (width + 2 * margin_px);
        const float y = tight && &item == &list.items.front() ? 4 : head_px + item.top_px;
        const Box place{x, top + y, width, lever_height_px};
        if (!item.field) {
            title(ui, item, {place.x, place.y, place.w, heading_px});
            continue;
        }
        const std::string id = "lever." + std::string(item.field->key);
        if (ui.mirror.focused(id) && focused_ != id) {
            focused_ = id;
            scroll_.reveal(head_px + item.top_px - 8, head_px + item.top_px + item.height_px);
            ui.wishes.another_frame = true;
        }
        if (row(ui, session, *item.field, place, shown)) moved = true;
    }
    scroll_.end(ui);
    ui.list->AddLine({box.x, box.y}, {box.right(), box.y}, ui.theme.rule);
    return moved;
}

} // namespace shimlight::view
