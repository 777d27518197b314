// SPDX-License-Identifier: MIT
#include "view/house_page.hpp"

#include "view/lever.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace shimlight::view {
namespace {

constexpr float gap_px = 14;
constexpr float card_pad_px = 14;

float heading(Ui& ui, const std::string& id, ImVec2 at, float width, const std::string& words) {
    text_fitted(ui, ui.platform.fonts.title, at, width, ui.theme.ink, words);
    note(ui, Role::heading, id, {at.x, at.y, width, 28}, words, "2");
    return 34;
}

/// A paragraph that the mirror reads too.
float sentence(Ui& ui, const std::string& id, ImVec2 at, float width, const std::string& name,
               const std::string& words, ImU32 colour) {
    if (words.empty()) return 0;
    const float height = paragraph(ui, ui.platform.fonts.body, at, width, colour, words);
    note(ui, Role::output, id, {at.x, at.y, width, height}, name, words);
    return height + 6;
}

} // namespace

float HousePage::openings(Ui& ui, Session& session, Box box, bool& chosen) {
    float y = box.y + heading(ui, "house.openings", box.min(), box.w, "Openings");
    const house::House& h = session.house();
    for (std::size_t i = 0; i < h.openings.size(); ++i) {
        const auto& record = h.openings[i];
        const float words = paragraph(ui, ui.platform.fonts.body, {0, 0}, box.w - 2 * card_pad_px,
                                      0, record.complaint, false);
        const Box card{box.x, y, box.w, 44 + words + 8};
        const std::string id = "opening." + std::to_string(i);
        const bool selected = static_cast<int>(i) == h.selected;
        MirrorNode node;
        node.id = id;
        node.role = Role::toggle;
        node.name = record.name + ": " + record.complaint;
        node.on = selected;
        put_in_place(ui, node, card);
        ui.mirror.add(std::move(node));
        const Touch touch = touch_area(ui, id, card);
        fill(ui, card, touch.hovered ? ui.theme.quote : ui.theme.card, radius_px);
        frame(ui, card, selected ? ui.theme.lever : ui.theme.rule, radius_px,
              selected ? 2.0f : 1.0f);
        text_fitted(ui, ui.platform.fonts.strong, {card.x + card_pad_px, card.y + 12},
                    card.w - 2 * card_pad_px, ui.theme.ink, record.name);
        paragraph(ui, ui.platform.fonts.body, {card.x + card_pad_px, card.y + 38},
                  card.w - 2 * card_pad_px, ui.theme.soft, record.complaint);
        focus_ring(ui, id, card);
        if (touch.pressed || ui.mirror.pressed(id)) {
            house::House next = h;
            next.selected = static_cast<int>(i);
            session.edit(std::move(next));
            chosen = true;
            return y + card.h - box.y;
        }
        y += card.h + 10;
    }
    return y - box.y + gap_px;
}

float HousePage::remedy(Ui& ui, Session& session, Box box) {
    float y = box.y + heading(ui, "house.remedy", box.min(), box.w, "Remedies");
    if (button(ui, "remedies.open", {box.x, y, box.w, touch_px},
               session.has_remedy() ? session.remedy_name() + " …" : "Choose a remedy …"))
        session.choosing_remedy = true;
    return y + touch_px - box.y + gap_px;
}

float HousePage::file(Ui& ui, Session& session, Box box) {
    float y = box.y + heading(ui, "house.file", box.min(), box.w, "File");
    const float half = (box.w - 10) / 2;
    ButtonStyle style;
    if (button(ui, "menu.save", {box.x, y, half, touch_px}, "Save to a file", style)) {
        ui.wishes.save_name = session.house().name.empty() ? "house" : session.house().name;
        ui.wishes.save_content = house::to_json(session.house());
    }
    style.action = "open-file";
    button(ui, "menu.open", {box.x + half + 10, y, half, touch_px}, "Open a file", style);
    y += touch_px + 8;
    y += sentence(ui, "storage.note", {box.x, y}, box.w, "Storage", ui.platform.storage_note,
                  ui.theme.soft);
    return y - box.y + gap_px;
}

float HousePage::settings(Ui& ui, Session& session, Box box) {
    float y = box.y + heading(ui, "house.settings", box.min(), box.w, "Units and look");
    const float third = (box.w - 20) / 3;
    const bool us = session.house().units == Units::us;
    ButtonStyle style;
    style.role = Role::toggle;
    auto set_units = [&session](Units units) {
        house::House next = session.house();
        next.units = units;
        session.edit(std::move(next));
    };
    style.on = us;
    if (button(ui, "units.us", {box.x, y, third, touch_px}, "°F, inch", style))
        set_units(Units::us);
    style.on = !us;
    if (button(ui, "units.si", {box.x + third + 10, y, third, touch_px}, "°C, mm", style))
        set_units(Units::si);
    style.on = session.heat_lines;
    style.help = "Draws the ways of the heat over the picture, each line the same heat";
    if (button(ui, "picture.heat", {box.x + 2 * (third + 10), y, third, touch_px}, "Heat lines",
               style))
        session.heat_lines = !session.heat_lines;
    style.help.clear();
    y += touch_px + 10;
    const char* const names[] = {"System", "Light", "Dark"};
    for (int i = 0; i < 3; ++i) {
        style.on = ui.platform.theme_choice == i;
        const Box place{box.x + static_cast<float>(i) * (third + 10), y, third, touch_px};
        if (button(ui, std::string("theme.") + names[i], place, names[i], style))
            ui.wishes.theme = i;
    }
    return y + touch_px - box.y + gap_px;
}

float HousePage::honesty(Ui& ui, Box box) {
    float y = box.y + heading(ui, "house.about", box.min(), box.w, "What the numbers are");
    y += sentence(
        ui, "about.numbers", {box.x, y}, box.w, "Method",
        "Temperatures come from a two-dimensional heat-flow solution of the cut and a heat "
        "balance of the glass. Draft at the seat and the leaks are engineering estimates. "
        "Nothing leaves this device.",
        ui.theme.ink);
    y += sentence(
        ui, "about.caution", {box.x, y}, box.w, "Caution",
        "Paint from before 1978 may hold lead. Glass near floors and doors must be safety "
        "glass, and a bedroom window may be the way out of a fire. Work at height, foam and "
        "wiring can hurt. Check your local code; licensed practice decides.",
        ui.theme.worse);
    return y - box.y + gap_px;
}

bool HousePage::draw(Ui& ui, Session& session, Box box) {
    ui.group = "house";
    fill(ui, box, ui.theme.paper);
    bool chosen = false;
    const float width = std::min(box.w - 2 * margin_px, 1100.0f);
    const bool two = width >= 720;
    const float column = two ? (width - 40) / 2 : width;
    const float left = box.x + (box.w - width) / 2;
    const float top = scroll_.begin(ui, box, content_px_) + gap_px;
    float y = top;
    y += openings(ui, session, {left, y, column, 0}, chosen);
    float second = two ? top : y;
    const float x = two ? left + column + 40 : left;
    second += remedy(ui, session, {x, second, column, 0});
    second += settings(ui, session, {x, second, column, 0});
    float& below = two ? y : second;
    below += file(ui, session, {left, below, column, 0});
    below += honesty(ui, {left, below, column, 0});
    content_px_ = std::max(y, second) - top + 2 * gap_px;
    scroll_.end(ui);
    return chosen;
}

} // namespace shimlight::view
