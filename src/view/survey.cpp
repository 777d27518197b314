// SPDX-License-Identifier: MIT
#include "view/survey.hpp"

#include "house/house_json.hpp"
#include "house/openings.hpp"
#include "view/entry.hpp"
#include "view/photo.hpp"
#include "view/units.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

using house::Entry;
using house::House;
using house::OpeningRecord;
using house::Seen;

constexpr float label_px = 88, gap_px = 14, between_px = 8;
constexpr const char* usual_rooms[] = {"Living room", "Kitchen", "Dining room", "Bedroom",
                                       "Bath",        "Hall",    "Stairs",      "Office",
                                       "Basement",    "Attic"};

std::size_t selected(const House& house) {
    return static_cast<std::size_t>(house.selected);
}

/// How many of a run of entries are written down.
int written(const house::Entries& site, Entry first, Entry last) {
    int count = 0;
    for (int e = static_cast<int>(first); e <= static_cast<int>(last); ++e)
        count += site.has(static_cast<Entry>(e));
    return count;
}

bool read_before(const house::Entries& site) {
    return written(site, Entry::before_glass_c, Entry::before_casing_c) > 0;
}
bool read_after(const house::Entries& site) {
    return written(site, Entry::after_glass_c, Entry::after_casing_c) > 0;
}
bool measured(const house::Entries& site) {
    return written(site, Entry::width_top_m, Entry::height_right_m) == 6;
}

std::string counted(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string size_of(const OpeningRecord& o, Units units) {
    return format_bare(Quantity::long_m, o.today.width_m, units) + " × " +
           format(Quantity::long_m, o.today.height_m, units);
}

/// The whole house in a line.
std::string tally(const House& house) {
    std::size_t taped = 0, read = 0, decided = 0;
    for (const OpeningRecord& o : house.openings) {
        taped += measured(o.site);
        read += read_before(o.site);
        decided += house::chosen_remedy(o) != nullptr;
    }
    const std::size_t rooms = house::rooms_of(house).size();
    std::string words = counted(house.openings.size(), "opening", "openings");
    if (rooms > 0) words += " in " + counted(rooms, "room", "rooms");
    return words + ": " + std::to_string(taped) + " measured, " + std::to_string(read) +
           " read before the work, " + std::to_string(decided) + " with a remedy.";
}

/// Names to pick from: the house's rooms, then usual ones with their next number.
std::vector<std::string> rooms_to_pick(const House& house) {
    std::vector<std::string> rooms = house::rooms_of(house);
    const std::size_t own = rooms.size();
    for (const char* const usual : usual_rooms) {
        std::string name = usual;
        const auto taken = [&] {
            return std::count(rooms.begin(), rooms.begin() + static_cast<std::ptrdiff_t>(own),
                              name) > 0;
        };
        for (int n = 2; taken(); ++n)
            name = std::string(usual) + " " + std::to_string(n);
        rooms.push_back(name);
    }
    return rooms;
}

/// A quantity of Today's window to type in.
void quantity(Ui& ui, Session& session, Column& column, const char* key) {
    const opening::Field& field = *opening::find_field(key);
    const double now = field.get(session.today());
    const std::string shown = typeset(format_bare(field.quantity, now, ui.units));
    const auto typed =
        typed_field(ui, "survey." + std::string(key), column.take(entry_height_px, 0),
                    {std::string(field.label), shown, unit_sign(field.quantity, ui.units), ""});
    if (!typed || *typed == shown) return;
    const auto value = parse(field.quantity, *typed, ui.units);
    if (value && *value >= field.min && *value <= field.max)
        return session.move(field, *value, Shown::today, "");
    session.message = std::string(field.label) + ": accepted is " +
                      format(field.quantity, field.min, ui.units) + " to " +
                      format(field.quantity, field.max, ui.units) + ".";
}

void facing(Ui& ui, Session& session, Column& column) {
    const opening::Field& field = *opening::find_field("facing");
    constexpr float wide_px = 160;
    const Box line = column.take(entry_height_px, 0);
    text_fitted(ui, ui.platform.fonts.body, {line.x, line.y + touch_px / 2 - 10},
                line.w - wide_px - between_px, ui.theme.ink, "Faces");
    std::vector<std::string> options;
    for (const opening::Choice& one : field.choices)
        options.emplace_back(one.label);
    const int now = static_cast<int>(field.get(session.today()));
    const int next =
        choice(ui, "survey.facing", {line.right() - wide_px, line.y, wide_px, touch_px}, "Faces",
               options, now);
    if (next >= 0 && next != now) session.move(field, next, Shown::today, "");
}

/// A text of the chosen opening; what was typed, if it is new and not too long.
std::optional<std::string> words_of(Ui& ui, Session& session, Box box, const std::string& id,
                                    const char* name, const std::string& now,
                                    std::size_t most_bytes) {
    TypedField field{name, now, "", "", Role::text};
    field.label_px = label_px;
    const auto typed = typed_field(ui, id, box, field);
    if (!typed || *typed == now) return std::nullopt;
    if (typed->size() <= most_bytes) return typed;
    session.message = std::string(name) +
                      ": too long; so many letters are accepted: " + std::to_string(most_bytes) +
                      ".";
    return std::nullopt;
}

void text_row(Ui& ui, Session& session, Column& column, const char* id, const char* name,
              std::string OpeningRecord::*text, std::size_t most_bytes) {
    const auto typed = words_of(ui, session, column.take(entry_height_px, 0), id, name,
                                session.record().*text, most_bytes);
    if (!typed) return;
    House next = session.house();
    next.openings[selected(next)].*text = *typed;
    session.edit(std::move(next));
}

/// A list of rooms to take one from; for who does not see it a drop-down.
std::optional<std::string> picked_room(Ui& ui, Box box, const House& house,
                                       const std::string& room) {
    const auto rooms = rooms_to_pick(house);
    const auto at = std::find(rooms.begin(), rooms.end(), room) - rooms.begin();
    const int now = at < static_cast<int>(rooms.size()) ? static_cast<int>(at) : -1;
    int picked = menu_tab(ui, "survey.rooms", box, "List", rooms, -1);
    MirrorNode node;
    node.id = "survey.room_list";
    node.role = Role::choice;
    node.name = "Rooms";
    node.options = rooms;
    node.now = now;
    node.max = static_cast<double>(rooms.size()) - 1;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
    focus_ring(ui, "survey.room_list", box);
    if (const auto number = ui.mirror.number("survey.room_list"))
        picked = static_cast<int>(*number);
    if (picked < 0 || picked >= static_cast<int>(rooms.size())) return std::nullopt;
    return rooms[static_cast<std::size_t>(picked)];
}

/// Yes and no side by side; neither while nobody has looked. What was pressed, if anything.
std::optional<Seen> seen_row(Ui& ui, Column& column, const std::string& id, std::string_view label,
                             Seen now) {
    constexpr float answer_px = 58;
    const float words_px = column.width() - 2 * answer_px - 2 * between_px;
    ImFont* font = ui.platform.fonts.body;
    const float high = paragraph(ui, font, {}, words_px, 0, label, false);
    const Box line = column.take(std::max(touch_px, high), 4);
    paragraph(ui, font, {line.x, line.centre().y - high / 2}, words_px, ui.theme.ink, label);
    ButtonStyle style;
    style.role = Role::toggle;
    style.compact = true;
    std::optional<Seen> pressed;
    for (const Seen answer : {Seen::yes, Seen::no}) {
        const bool yes = answer == Seen::yes;
        style.on = now == answer;
        style.spoken = std::string(label) + (yes ? ": yes" : ": no");
        const float x = line.right() - (yes ? 2 * answer_px + between_px : answer_px);
        if (button(ui, id + (yes ? ".yes" : ".no"),
                   {x, line.centre().y - touch_px / 2, answer_px, touch_px}, yes ? "Yes" : "No",
                   style))
            pressed = style.on ? Seen::not_looked : answer;
    }
    return pressed;
}

} // namespace

std::string survey_state(const OpeningRecord& record) {
    const int tape = written(record.site, Entry::width_top_m, Entry::height_right_m);
    std::string words = measured(record.site) ? "Measured"
                        : tape > 0            ? "Partly measured"
                                              : "Not measured";
    words += read_after(record.site)    ? " · read before and after"
             : read_before(record.site) ? " · read before"
                                        : " · not read";
    if (!record.photos.empty())
        words += " · " + counted(record.photos.size(), "photograph", "photographs");
    const opening::Remedy* const remedy = house::chosen_remedy(record);
    return words + " · " + (remedy ? remedy->name : std::string("no remedy"));
}

void Survey::changed(Ui& ui, Session& session, House next) {
    session.edit(std::move(next));
    open_ = reveal_ = true;
    ui.wishes.another_frame = true;
}

/// Where and how large: what differs from window to window.
void Survey::quick(Ui& ui, Session& session, Column& column) {
    text_row(ui, session, column, "survey.name", "Name", &OpeningRecord::name,
             house::max_name_bytes);
    const House& h = session.house();
    const Box line = column.take(entry_height_px, 0);
    constexpr float list_px = 76;
    const std::string& room = session.record().room_name;
    std::optional<std::string> chosen =
        words_of(ui, session, {line.x, line.y, line.w - list_px - between_px, line.h},
                 "survey.room", "Room", room, house::max_name_bytes);
    const Box list{line.right() - list_px, line.y, list_px, touch_px};
    if (const auto picked = picked_room(ui, list, h, room)) chosen = picked;
    if (chosen && *chosen != room) {
        House next = h;
        house::set_room(next, selected(next), *chosen);
        changed(ui, session, std::move(next));
    }
    quantity(ui, session, column, "width_m");
    quantity(ui, session, column, "height_m");
    facing(ui, session, column);
}

void Survey::actions(Ui& ui, Session& session, Column& column) {
    const House& h = session.house();
    const std::size_t at = selected(h);
    const Box line = column.take(touch_px, gap_px);
    const float share = (line.w - 2 * touch_px - 3 * between_px) / 2;
    ButtonStyle style;
    style.look = ButtonLook::filled;
    style.enabled = h.openings.size() < house::max_openings;
    style.help = "The same window once more, with the next number";
    if (button(ui, "survey.copy", {line.x, line.y, share, line.h}, "Copy", style)) {
        House next = h;
        house::copy_opening(next, at);
        return changed(ui, session, std::move(next));
    }
    style = {};
    style.sign = true;
    float x = line.x + share + between_px;
    for (const int way : {-1, 1}) {
        const house::Step step = house::step_of(h, at, way);
        style.enabled = step != house::Step::none;
        style.spoken = std::string(step == house::Step::room ? "Move its room " : "Move it ") +
                       (way < 0 ? "up" : "down");
        if (button(ui, way < 0 ? "survey.up" : "survey.down", {x, line.y, touch_px, line.h},
                   way < 0 ? "↑" : "↓", style)) {
            House next = h;
            house::move_opening(next, at, way);
            return changed(ui, session, std::move(next));
        }
        x += touch_px + between_px;
    }
    style = {};
    style.enabled = h.openings.size() > 1;
    style.help = "Undo gives it back";
    if (button(ui, "survey.delete", {x, line.y, share, line.h}, "Delete", style)) {
        deleted_ = session.record().name;
        House next = h;
        house::delete_opening(next, at);
        session.edit(std::move(next));
        deleted_at_ = session.revision();
        open_ = false;
        ui.wishes.another_frame = true;
    }
}

void Survey::seen(Ui& ui, Session& session, Column& column) {
    const auto rows = house::observation_rows();
    std::size_t looked = 0;
    for (std::size_t i = 0; i < rows.size(); ++i)
        looked += house::seen(session.record(), i) != Seen::not_looked;
    column.heading("survey.seen",
                   "Seen on site: " + std::to_string(looked) + " of " +
                       std::to_string(rows.size()) + " looked at",
                   3);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Seen now = house::seen(session.record(), i);
        const std::string id = "seen." + std::string(rows[i].key);
        const auto pressed = seen_row(ui, column, id, rows[i].label, now);
        if (now == Seen::yes && !rows[i].is_test())
            column.sentence(id + ".speaks", rows[i].label, rows[i].speaks, ui.theme.lever);
        if (!pressed) continue;
        House next = session.house();
        house::set_seen(next.openings[selected(next)], i, *pressed);
        return session.edit(std::move(next));
    }
    column.sentence("survey.tests", "Tests",
                    "The first seven are tests: Readings reckons with them.", ui.theme.soft);
    column.space(gap_px);
}

void Survey::photos(Ui& ui, Session& session, Column& column) {
    const auto all = session.record().photos; // a press changes them
    column.heading("survey.photos", "Photographs", 3);
    ButtonStyle style;
    style.action = "add-photo";
    style.enabled = all.size() < house::max_photos;
    style.help = style.enabled ? "Kept on this device and in saved files, never in links"
                               : "So many are kept of an opening, no more";
    button(ui, "photo.add", column.take(touch_px), "Add a photograph", style);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Box line = column.take(photo_high_px, 8);
        photo(ui, session, {line.x, line.y, photo_wide_px, photo_high_px}, all[i]);
        const float x = line.x + photo_wide_px + 12, w = line.right() - x;
        const std::string id = "photo." + all[i].id;
        TypedField field{"Words", all[i].words, "", "what it shows", Role::text};
        field.label_px = 0;
        const auto typed = typed_field(ui, id + ".words", {x, line.y, w, touch_px}, field);
        const bool remove =
            button(ui, id + ".remove", {x, line.y + touch_px, w, touch_px}, "Remove");
        const bool renamed =
            typed && *typed != all[i].words && typed->size() <= house::max_name_bytes;
        if (!remove && !renamed) continue;
        House next = session.house();
        auto& list = next.openings[selected(next)].photos;
        if (remove)
            list.erase(list.begin() + static_cast<std::ptrdiff_t>(i));
        else
            list[i].words = *typed;
        return session.edit(std::move(next));
    }
    column.space(gap_px);
}

void Survey::editor(Ui& ui, Session& session, Column& column) {
    const float from = column.y;
    quick(ui, session, column);
    column.space(4);
    actions(ui, session, column);
    shown_to_ = column.y;
    if (!open_) return; // it was deleted
    text_row(ui, session, column, "survey.complaint", "Complaint", &OpeningRecord::complaint,
             house::max_notes_bytes);
    text_row(ui, session, column, "survey.notes", "Notes", &OpeningRecord::notes,
             house::max_notes_bytes);
    column.space(gap_px);
    seen(ui, session, column);
    photos(ui, session, column);
    fill(ui, {column.x() - 9, from, 3, column.y - from - gap_px}, ui.theme.lever, 1.5f);
}

void Survey::list(Ui& ui, Session& session, Column& column) {
    const House h = session.house(); // a press changes it
    const bool rooms = !house::rooms_of(h).empty();
    for (std::size_t i = 0; i < h.openings.size(); ++i) {
        const OpeningRecord& record = h.openings[i];
        if (rooms && (i == 0 || h.openings[i - 1].room_name != record.room_name))
            column.heading("survey.room." + std::to_string(i),
                           record.room_name.empty() ? "No room named" : record.room_name, 3);
        const bool on = static_cast<int>(i) == h.selected;
        if (on) shown_from_ = column.y;
        if (on && deleted_at_ == session.revision())
            column.sentence("survey.deleted", "Deleted", deleted_ + " is deleted; ↩ gives it back.",
                            ui.theme.ink);
        const std::string said = record.complaint.empty() ? "" : " · “" + record.complaint + "”";
        const bool pressed =
            column.card("opening." + std::to_string(i), record.name, size_of(record, ui.units),
                        survey_state(record) + said, on);
        if (pressed) {
            open_ = !on || !open_;
            reveal_ = open_;
            ui.wishes.another_frame = true;
        }
        if (pressed && !on) {
            House next = h;
            next.selected = static_cast<int>(i);
            session.edit(std::move(next));
            continue; // what can be written down of it follows in the next frame
        }
        if (on && open_ && session.house().selected == h.selected) editor(ui, session, column);
    }
}

void Survey::add(Ui& ui, Session& session, Column& column) {
    const Box line = column.take(touch_px, gap_px);
    const float half = (line.w - between_px) / 2;
    ButtonStyle style;
    style.enabled = session.house().openings.size() < house::max_openings;
    style.help = "Like the last one, in the same room";
    const bool opening =
        button(ui, "survey.new", {line.x, line.y, half, line.h}, "New opening", style);
    style.help = "Like the last one, in a room of its own";
    const bool room = button(ui, "survey.new_room",
                             {line.x + half + between_px, line.y, half, line.h}, "New room", style);
    if (!opening && !room) return;
    House next = session.house();
    if (room)
        house::new_room(next);
    else
        house::copy_opening(next, next.openings.size() - 1);
    changed(ui, session, std::move(next));
}

void Survey::draw(Ui& ui, Session& session, Column& column, Scroll& scroll, float top) {
    column.heading("house.openings", "Openings");
    column.sentence("survey.tally", "So far", tally(session.house()), ui.theme.soft);
    const bool reveal = reveal_;
    reveal_ = false;
    shown_to_ = shown_from_ = column.y;
    list(ui, session, column);
    add(ui, session, column);
    if (!reveal || reveal_) return;
    scroll.reveal(shown_from_ - top - 40, shown_to_ - top);
    ui.wishes.another_frame = true;
}

} // namespace shimlight::view
