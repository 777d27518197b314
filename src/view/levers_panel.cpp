// SPDX-License-Identifier: MIT
#include "view/levers_panel.hpp"

#include "view/lever.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace shimlight::view {
namespace {

using opening::Field;
using opening::Scope;

constexpr float head_px = 58;
constexpr float two_columns_from_px = 600;
constexpr float limit_px = 20; // line that says why a limit is a limit

/// Levers that do something in this case.
std::vector<const Field*> shown_fields(const opening::Case& c) {
    std::vector<const Field*> shown;
    for (const Field& field : opening::fields())
        if (opening::applies(field, c)) shown.push_back(&field);
    return shown;
}

bool belongs_to_remedy(const Field& field, Shown shown) {
    return shown == Shown::remedy && field.scope == Scope::opening;
}

} // namespace

float LeversPanel::head(Ui& ui, Session& session, Box box, Shown& shown) {
    const house::OpeningRecord& record = session.record();
    std::vector<std::string> names;
    for (const auto& remedy : record.remedies)
        names.push_back(remedy.name);
    text(ui, ui.platform.fonts.small, {box.x, box.y + 16}, ui.theme.soft, "Remedy");
    const int chosen = choice(ui, "remedy.choice", {box.x + 58, box.y + 2, box.w - 58, touch_px},
                              "Remedy", names, record.chosen);
    if (chosen >= 0 && chosen < static_cast<int>(names.size()) && chosen != record.chosen) {
        house::House next = session.house();
        next.openings[static_cast<std::size_t>(next.selected)].chosen = chosen;
        session.edit(std::move(next));
        shown = Shown::remedy;
    }
    return head_px;
}

bool LeversPanel::row(Ui& ui, Session& session, const Field& field, Box box, Shown shown) {
    const opening::Case today = session.today();
    const bool of_remedy = belongs_to_remedy(field, shown) && session.has_remedy();
    const opening::Case now = of_remedy ? session.remedy() : today;
    std::string was;
    if (of_remedy && std::fabs(field.get(today) - field.get(now)) > 1e-12)
        was = value_text(field, field.get(today), ui.units);
    const auto moved = lever(ui, {field, now, was}, box);
    const double value = field.get(now);
    const bool at_limit = field.quantity != Quantity::choice &&
                          field.quantity != Quantity::yes_no && !field.limit_reason.empty() &&
                          (value <= field.min || value >= field.max);
    if (at_limit)
        text_fitted(ui, ui.platform.fonts.small, {box.x, box.y + lever_height_px - 4}, box.w,
                    ui.theme.lever, std::string(field.limit_reason));
    if (!moved || std::fabs(*moved - value) < 1e-12) return false;
    session.move(field, *moved, of_remedy ? Shown::remedy : Shown::today,
                 ui.gesture.down ? "lever." + std::string(field.key) : std::string());
    return true;
}

bool LeversPanel::draw(Ui& ui, Session& session, Box box, Shown& shown) {
    ui.group = "levers";
    fill(ui, box, ui.theme.card);
    note(ui, Role::heading, "levers.title", {box.x + margin_px, box.y, box.w, 20}, "Levers", "2");
    const bool of_remedy = shown == Shown::remedy && session.has_remedy();
    const opening::Case c = of_remedy ? session.remedy() : session.today();
    const auto fields = shown_fields(c);
    const int columns = box.w >= two_columns_from_px ? 2 : 1;
    const int per_column = (static_cast<int>(fields.size()) + columns - 1) / columns;
    const float each = lever_height_px + limit_px;
    const float content = head_px + static_cast<float>(per_column) * each + 12;
    const float width =
        (box.w - 2 * margin_px - (columns - 1) * 2 * margin_px) / static_cast<float>(columns);
    const float top = scroll_.begin(ui, box, content);
    bool moved = false;
    head(ui, session, {box.x + margin_px, top + 4, width, head_px}, shown);
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const int column = static_cast<int>(i) / per_column,
                  line = static_cast<int>(i) % per_column;
        const float offset = head_px + static_cast<float>(line) * each;
        const Box row_box{box.x + margin_px + static_cast<float>(column) * (width + 2 * margin_px),
                          top + offset, width, lever_height_px};
        const std::string id = "lever." + std::string(fields[i]->key);
        if (ui.mirror.focused(id) && focused_ != id) {
            focused_ = id;
            scroll_.reveal(offset - 8, offset + each);
            ui.wishes.another_frame = true;
        }
        if (row(ui, session, *fields[i], row_box, shown)) moved = true;
    }
    scroll_.end(ui);
    ui.list->AddLine({box.x, box.y}, {box.right(), box.y}, ui.theme.rule);
    return moved;
}

} // namespace shimlight::view
