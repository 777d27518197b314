// SPDX-License-Identifier: MIT
#include "view/library.hpp"

#include "house/house_json.hpp"
#include "view/entry.hpp"

#include <array>

namespace shimlight::view {
namespace {

constexpr float between_px = 10, gap_px = 14, back_px = 108;

std::array<Box, 2> halves(const Box& line) {
    const float w = (line.w - between_px) / 2;
    return {Box{line.x, line.y, w, line.h}, Box{line.x + w + between_px, line.y, w, line.h}};
}

void ask(Ui& ui, const char* act, std::string text = {}, std::string other = {}) {
    ui.wishes.act = act;
    ui.wishes.act_text = std::move(text);
    ui.wishes.act_other = std::move(other);
}

bool keeps(const Ui& ui) {
    return ui.platform.shelf && ui.platform.shelf->keeps;
}

bool lent(const Ui& ui) {
    return keeps(ui) && ui.platform.shelf->lent;
}

/// One usual opening; weather, prices and units as where one works.
house::House new_house(const house::House& like) {
    house::House house;
    house.name = "New house";
    house.currency = like.currency;
    house.hour = like.hour;
    house.units = like.units;
    house.weather = like.weather;
    house.running = like.running;
    house.openings.resize(1);
    house.openings[0].name = "First opening";
    house.openings[0].chosen = -1;
    return house;
}

house::House copy_of(house::House house) {
    const char* const mark = ", copy";
    if (house.name.size() + 6 <= house::max_name_bytes) house.name += mark;
    return house;
}

void typed(Ui& ui, Session& session, Column& column, const char* id, const char* name,
           std::string house::House::*which) {
    const std::string& now = session.house().*which;
    const auto words =
        typed_field(ui, id, column.take(entry_height_px, 0), {name, now, "", "", Role::text});
    if (!words || *words == now) return;
    if (words->size() > house::max_name_bytes) {
        session.message = std::string(name) + ": that is longer than a file can hold.";
        return;
    }
    house::House next = session.house();
    next.*which = *words;
    session.edit(std::move(next));
}

} // namespace

void open_beside(Ui& ui, Session& session, house::House house) {
    if (keeps(ui)) return ask(ui, "add", house::to_json(house));
    session.edit(std::move(house));
    session.mark_opened();
}

void Library::this_house(Ui& ui, Session& session, Column& column) {
    column.heading("library.this", "The open house", 3);
    typed(ui, session, column, "house.name", "Name", &house::House::name);
    typed(ui, session, column, "house.place", "Place", &house::House::place);
    column.space(6);
    if (!keeps(ui)) return;
    if (lent(ui)) {
        column.sentence("library.lent", "Another tab",
                        "This house is open in another tab. What is changed here is not kept: use "
                        "it here, duplicate it, or open another house.",
                        ui.theme.worse);
        if (button(ui, "library.take", column.take(touch_px), "Use it here")) ask(ui, "take");
    }
    const auto line = halves(column.take(touch_px));
    if (button(ui, "library.duplicate", line[0], "Duplicate"))
        ask(ui, "duplicate", house::to_json(copy_of(session.house())));
    ButtonStyle style;
    style.enabled = !lent(ui);
    style.help = "Into the trash, from where it can be put back";
    if (button(ui, "library.delete", line[1], "Delete", style)) {
        gone_ = session.house().name;
        ask(ui, "remove", house::to_json(session.house()),
            house::to_json(new_house(session.house())));
    }
}

void Library::others(Ui& ui, Session& session, Column& column) {
    column.space(between_px);
    column.heading("library.others", "Other houses", 3);
    if (keeps(ui))
        for (const ShelfHouse& one : ui.platform.shelf->houses)
            if (!one.trashed && column.card("shelf." + one.id, one.name, "", one.words, false))
                ask(ui, "open", one.id);
    const auto line = halves(column.take(touch_px));
    ButtonStyle style;
    style.help = "Begins with this house's weather, prices and units";
    if (button(ui, "library.new", line[0], "New house", style))
        open_beside(ui, session, new_house(session.house()));
    style.help = "Invented people and places, to try things with";
    if (button(ui, "library.demo", line[1], "Demo house", style))
        open_beside(ui, session, house::demo_house());
    style.help = "All but those in the trash. Opening the file adds them to what is there";
    if (button(ui, "library.save", column.take(touch_px), "Save all houses to a file", style))
        ask(ui, "save", house::to_json(session.house()));
}

void Library::trash(Ui& ui, Column& column) {
    int count = 0;
    for (const ShelfHouse& one : ui.platform.shelf->houses) {
        if (!one.trashed) continue;
        if (++count == 1) {
            column.space(between_px);
            if (!gone_.empty())
                column.sentence("library.gone", "Deleted", gone_ + " is in the trash.",
                                ui.theme.ink);
            column.heading("library.trash", "Trash", 3);
        }
        const Box line = column.take(touch_px);
        const float w = line.w - back_px - between_px;
        text_fitted(ui, ui.platform.fonts.body, {line.x, line.y + 4}, w, ui.theme.ink, one.name);
        text_fitted(ui, ui.platform.fonts.small, {line.x, line.y + 24}, w, ui.theme.soft,
                    one.words);
        note(ui, Role::output, "shelf.gone." + one.id, {line.x, line.y, w, line.h}, one.name,
             one.words);
        ButtonStyle style;
        style.spoken = "Put back " + one.name;
        if (button(ui, "shelf.back." + one.id, {line.right() - back_px, line.y, back_px, line.h},
                   "Put back", style)) {
            gone_.clear();
            ask(ui, "restore", one.id);
        }
    }
    if (count == 0) {
        sure_ = false;
        return;
    }
    if (!sure_) {
        sure_ = button(ui, "library.empty", column.take(touch_px), "Empty the trash");
        return;
    }
    const auto line = halves(column.take(touch_px, between_px));
    if (button(ui, "library.erase", line[0], "Delete " + std::to_string(count) + " for good")) {
        ask(ui, "empty");
        sure_ = false;
    }
    if (button(ui, "library.spare", line[1], "Keep them")) sure_ = false;
}

void Library::draw(Ui& ui, Session& session, Column& column) {
    column.heading("house.houses", "Houses");
    this_house(ui, session, column);
    others(ui, session, column);
    if (keeps(ui)) {
        trash(ui, column);
        column.sentence("library.promise", "How long they are kept", ui.platform.shelf->promise,
                        ui.theme.soft);
    }
    column.space(gap_px);
}

} // namespace shimlight::view
