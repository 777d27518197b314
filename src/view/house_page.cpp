// SPDX-License-Identifier: MIT
#include "view/house_page.hpp"

#include "house/link.hpp"
#include "view/report.hpp"

#include <algorithm>
#include <array>

namespace shimlight::view {
namespace {

constexpr float between_px = 10, gap_px = 14;

/// Three in a row.
std::array<Box, 3> thirds(const Box& line) {
    const float w = (line.w - 2 * between_px) / 3;
    return {Box{line.x, line.y, w, line.h}, Box{line.x + w + between_px, line.y, w, line.h},
            Box{line.x + 2 * (w + between_px), line.y, w, line.h}};
}

} // namespace

HousePage::HousePage() = default;
HousePage::~HousePage() = default;

void HousePage::remedy(Ui& ui, Session& session, Column& column) {
    column.heading("house.remedy", "Remedies");
    if (button(ui, "remedies.open", column.take(touch_px, gap_px),
               session.has_remedy() ? session.remedy_name() + " …" : "Choose a remedy …"))
        session.choosing_remedy = true;
}

void HousePage::file(Ui& ui, Session& session, Column& column) {
    column.heading("house.file", "File");
    const Box line = column.take(touch_px);
    const float half = (line.w - between_px) / 2;
    ButtonStyle style;
    if (button(ui, "menu.save", {line.x, line.y, half, line.h}, "Save to a file", style)) {
        ui.wishes.save_name = session.house().name.empty() ? "house" : session.house().name;
        ui.wishes.save_content = house::to_json(session.house());
    }
    style.action = "open-file";
    button(ui, "menu.open", {line.x + half + between_px, line.y, half, line.h}, "Open a file",
           style);
    column.space(between_px);
    if (button(ui, "menu.link", column.take(touch_px), "Link to this opening"))
        ui.wishes.link = house::to_json(house::house_to_link(session.house()));
    column.sentence("storage.note", "Storage", ui.platform.storage_note, ui.theme.soft);
    column.space(gap_px);
}

/// True when the list of keys is asked for.
bool HousePage::settings(Ui& ui, Session& session, Column& column) {
    column.heading("house.settings", "Units and look");
    const bool us = session.house().units == Units::us;
    ButtonStyle style;
    style.role = Role::toggle;
    auto set_units = [&session](Units units) {
        house::House next = session.house();
        next.units = units;
        session.edit(std::move(next));
    };
    const auto units = thirds(column.take(touch_px, between_px));
    style.on = us;
    if (button(ui, "units.us", units[0], "°F, inch", style)) set_units(Units::us);
    style.on = !us;
    if (button(ui, "units.si", units[1], "°C, mm", style)) set_units(Units::si);
    style.on = session.heat_lines;
    style.help = "Draws the ways of the heat over the picture, each line the same heat";
    if (button(ui, "picture.heat", units[2], "Heat lines", style))
        session.heat_lines = !session.heat_lines;
    style.help.clear();
    const char* const names[] = {"System", "Light", "Dark"};
    const char* const shown[] = {"As device", "Light", "Dark"};
    const auto looks = thirds(column.take(touch_px, between_px));
    for (std::size_t i = 0; i < looks.size(); ++i) {
        style.on = ui.platform.theme_choice == static_cast<int>(i);
        if (button(ui, std::string("theme.") + names[i], looks[i], shown[i], style))
            ui.wishes.theme = static_cast<int>(i);
    }
    const char* const sizes[] = {"Normal", "Large", "Largest"};
    const auto texts = thirds(column.take(touch_px, between_px));
    for (std::size_t i = 0; i < texts.size(); ++i) {
        style.on = ui.platform.text_choice == static_cast<int>(i);
        style.spoken = std::string(sizes[i]) + " text";
        const char* const label = i == 0 ? "Normal text" : sizes[i];
        if (button(ui, std::string("text.") + sizes[i], texts[i], label, style))
            ui.wishes.text = static_cast<int>(i);
    }
    return button(ui, "keys.open", column.take(touch_px, gap_px), "Keys");
}

void HousePage::honesty(Ui& ui, Column& column) {
    column.heading("house.about", "What the numbers are");
    column.sentence("about.numbers", "Method",
                    "Temperatures come from a two-dimensional heat-flow solution of the cut and a "
                    "heat balance of the glass. Draft at the seat and the leaks are engineering "
                    "estimates. Nothing leaves this device.",
                    ui.theme.ink);
    column.sentence("about.caution", "Caution",
                    "Paint from before 1978 may hold lead. Glass near floors and doors must be "
                    "safety glass, and a bedroom window may be the way out of a fire. Work at "
                    "height, foam and wiring can hurt. Check your local code; licensed practice "
                    "decides.",
                    ui.theme.worse);
}

bool HousePage::draw(Ui& ui, Session& session, Box box, bool& keys) {
    ui.group = "house";
    fill(ui, box, ui.theme.paper);
    const Columns columns(box);
    const float top = scroll_.begin(ui, box, content_px_) + gap_px;
    Column left(ui, columns.first(top));
    survey_.draw(ui, session, left, scroll_, top - gap_px);
    bool chosen = words_.draw(ui, session, left);
    library_.draw(ui, session, left);
    Column right(ui, columns.two ? columns.second(top) : columns.first(left.y));
    remedy(ui, session, right);
    chosen = label_.draw(ui, session, right) || chosen;
    keys = settings(ui, session, right);
    if (!report_) report_ = std::make_unique<Report>();
    report_->draw(ui, session, right);
    file(ui, session, right);
    honesty(ui, right);
    content_px_ = std::max(left.y, right.y) - top + 2 * gap_px;
    scroll_.end(ui);
    return chosen;
}

} // namespace shimlight::view
