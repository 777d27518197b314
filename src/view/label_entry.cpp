// SPDX-License-Identifier: MIT
#include "view/label_entry.hpp"

#include "assess/label_steps.hpp"
#include "opening/words.hpp"
#include "view/entry.hpp"
#include "view/remedies.hpp"
#include "view/units.hpp"

#include <algorithm>
#include <chrono>

namespace shimlight::view {
namespace {

using opening::Opening;

constexpr std::chrono::milliseconds frame_share{3}; ///< in which steps of the search begin

/// What can be typed; the limits are of numbers, the search says what no window can have.
struct Printed {
    const char *id, *name;
    double max;
};
enum { printed_u, printed_shgc, printed_light, printed_air };
constexpr Printed printed[] = {{"label.u", "U-factor, whole window", 100},
                               {"label.shgc", "SHGC, whole window", 1},
                               {"label.light", "Visible light, if printed", 1},
                               {"label.air", "Air leakage, if printed", 100}};

std::string unit_of(std::size_t which, Units units) {
    if (which == printed_u) return u_unit(units);
    return which != printed_air ? "" : units == Units::us ? "cfm/ft²" : "L/s·m²";
}

std::optional<double> number_in(const std::string& typed) {
    return parse(Quantity::number, typed, Units::si);
}

std::string two_decimals(double value) {
    return format_u(value, Units::si);
}

/// As it was typed, without what stands around it.
std::string bare_number(const std::string& typed, double value) {
    const char* const digits = "0123456789.,";
    const std::size_t from = std::min(typed.find_first_of(digits), typed.size());
    const std::size_t to = typed.find_first_not_of(digits, from);
    const std::string bare = typed.substr(from, std::min(to, typed.size()) - from);
    return number_in(bare) == value ? bare : two_decimals(value);
}

std::string word(const char* key, const Opening& o) {
    opening::Case c;
    c.opening = o;
    const opening::Field& field = *opening::find_field(key);
    return opening::value_in_words(field, field.get(c));
}

std::string capital(std::string words) {
    if (words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

std::string build_name(const Opening& o) {
    const char* const panes[] = {"single glass", "2 panes", "3 panes"};
    return capital(word("frame", o)) + ", " + panes[o.glazing.panes - 1];
}

/// What glass, gas, coating and spacer.
std::string build_words(const Opening& o, Units units) {
    const opening::Glazing& g = o.glazing;
    std::string words = "No coating. ";
    if (g.coating != opening::Coating::none)
        words = "Low-e on " + word("glazing.coating", o) + ": " + word("glazing.coating_kind", o) +
                ", emissivity " + format(Quantity::emissivity, g.emissivity, units) + ". ";
    if (g.panes > 1) {
        words += capital(word("glazing.gas", o));
        if (g.gas != physics::Gas::air) words += " " + format_percent(g.gas_share);
        words += ", gap " + format(Quantity::thin_m, g.gap_m, units) + ". ";
    }
    words += capital(word("glazing.tint", o)) + " glass, " +
             format(Quantity::thin_m, g.pane_thickness_m, units) + ".";
    if (g.panes > 1) words += " Spacer: " + word("glazing.spacer", o) + ".";
    return words;
}

/// A drop-down with its name before it; the newly chosen index or -1.
int named_choice(Ui& ui, const char* id, Box box, const char* name,
                 const std::vector<std::string>& options, int now) {
    constexpr float wide_px = 200;
    text_fitted(ui, ui.platform.fonts.body, {box.x, box.y + touch_px / 2 - 10}, box.w - wide_px - 8,
                ui.theme.ink, name);
    return choice(ui, id, {box.right() - wide_px, box.y, wide_px, touch_px}, name, options, now);
}

} // namespace

LabelEntry::LabelEntry() = default;
LabelEntry::~LabelEntry() = default;

/// What was typed says the same in the other units.
void LabelEntry::take_units(Units units) {
    if (units == units_) return;
    const bool us = units == Units::us;
    const auto turn = [&](std::string& typed, double si_per_us) {
        const auto value = number_in(typed);
        if (value) typed = two_decimals(us ? *value / si_per_us : *value * si_per_us);
    };
    turn(typed_[printed_u], assess::btu_w_m2k);
    turn(typed_[printed_air], assess::cfm_l_s_m2);
    units_ = units;
    asked_ = false;
}

assess::Label LabelEntry::label() const {
    assess::Label l;
    l.us_units = units_ == Units::us;
    l.u = number_in(typed_[printed_u]);
    l.shgc = number_in(typed_[printed_shgc]);
    l.light = number_in(typed_[printed_light]);
    l.air = number_in(typed_[printed_air]);
    if (panes_ > 0) l.panes = panes_;
    if (frame_ > 0) l.frame = static_cast<opening::FrameMaterial>(frame_ - 1);
    return l;
}

void LabelEntry::fields(Ui& ui, Session& session, Column& column) {
    for (std::size_t i = 0; i < typed_.size(); ++i) {
        const Printed& row = printed[i];
        const auto typed = typed_field(ui, row.id, column.take(entry_height_px, 2),
                                       {row.name, typed_[i], unit_of(i, units_), ""});
        if (!typed || *typed == typed_[i]) continue;
        const bool empty = typed->find_first_not_of(' ') == std::string::npos;
        const auto value = number_in(*typed);
        if (!empty && (!value || *value < 0 || *value > row.max)) {
            session.message = std::string(row.name) + ": accepted is 0 to " +
                              format(Quantity::number, row.max, units_) + ".";
            continue;
        }
        typed_[i] = empty ? "" : bare_number(*typed, *value);
        asked_ = false;
    }
    const auto choose = [&](int& now, const char* id, const char* name,
                            const std::vector<std::string>& options) {
        const int next = named_choice(ui, id, column.take(entry_height_px, 2), name, options, now);
        if (next < 0 || next == now) return;
        now = next;
        asked_ = false;
    };
    choose(panes_, "label.panes", "Panes, if seen", {"any", "1", "2", "3"});
    std::vector<std::string> frames{"any"};
    for (const opening::Choice& frame : opening::find_field("frame")->choices)
        frames.emplace_back(frame.label);
    choose(frame_, "label.frame", "Frame, if seen", frames);
}

void LabelEntry::start() {
    if (search_)
        search_->ask(label());
    else
        search_ = std::make_unique<assess::LabelSearch>(label());
    asked_ = true;
    chosen_ = 0;
}

/// Some milliseconds of the search, and how far it is.
void LabelEntry::look(Ui& ui, Column& column) {
    const auto started = std::chrono::steady_clock::now();
    while (search_->step() && std::chrono::steady_clock::now() - started < frame_share) {
    }
    ui.wishes.another_frame = true;
    const double share = search_->share_done();
    const Box line{column.x(), column.y + 30, column.width(), 4};
    column.row("label.progress", "Looked up among generic builds", format_percent(share),
               ui.theme.ink);
    fill(ui, {line.x, line.y, line.w * static_cast<float>(share), line.h}, ui.theme.lever, 2);
}

void LabelEntry::builds(Ui& ui, const assess::LabelAnswer& answer, Column& column) {
    const bool refused = answer.standing == assess::LabelStanding::refused;
    const std::string told = refused ? "Not taken: " + answer.reason : answer.reason;
    const bool whole = answer.standing == assess::LabelStanding::matched;
    const float high = paragraph(ui, ui.platform.fonts.body, {column.x(), column.y}, column.width(),
                                 whole ? ui.theme.ink : ui.theme.worse, told);
    note(ui, Role::status, "label.told", {column.x(), column.y, column.width(), high}, "Found",
         told);
    column.space(high + 8);
    for (std::size_t i = 0; i < answer.builds.size(); ++i) {
        const assess::LabelBuild& build = answer.builds[i];
        const std::string rated = "U\xE2\x80\x89" + format_u(build.rated.u_w_m2k, units_) +
                                  ", SHGC\xE2\x80\x89" + two_decimals(build.rated.shgc);
        if (!column.card("label.build." + std::to_string(i), build_name(build.opening), "",
                         build_words(build.opening, units_) + " Computed: " + rated + ".",
                         i == chosen_))
            continue;
        chosen_ = i;
        ui.wishes.another_frame = true;
    }
}

/// The chosen build's ratings beside what is printed.
void LabelEntry::beside(Ui& ui, const assess::LabelBuild& build, Column& column) const {
    const assess::Rated& r = build.rated;
    const auto row = [&](const char* id, const char* name, const std::string& computed,
                         const std::string& typed) {
        column.row(id, name, typed.empty() ? computed : computed + ", label " + typed,
                   ui.theme.ink);
    };
    column.heading("label.computed", build_name(build.opening) + ": computed", 3);
    row("label.computed.u", "U, whole window", format_u(r.u_w_m2k, units_), typed_[printed_u]);
    row("label.computed.shgc", "SHGC", two_decimals(r.shgc), typed_[printed_shgc]);
    row("label.computed.light", "Visible light", two_decimals(r.light), typed_[printed_light]);
    row("label.computed.centre", "U, center of glass", format_u(r.u_centre_w_m2k, units_), "");
    if (!typed_[printed_air].empty())
        row("label.computed.air", "Air leakage, as printed", typed_[printed_air], "");
    column.space(4);
    column.sentence("label.rating", "Rating",
                    std::string("U in ") + u_unit(units_) + ", of a unit " +
                        format(Quantity::long_m, build.opening.width_m, units_) + " × " +
                        format(Quantity::long_m, build.opening.height_m, units_) + " at " +
                        format_temperature(-18, units_) +
                        " outdoors. In another size and weather it differs a little.",
                    ui.theme.soft);
}

/// What is printed; else what is computed, and so said. In a short row what comes first is seen.
std::string LabelEntry::name(const assess::LabelBuild& build, bool matched) const {
    std::string name = matched ? "Label:" : "Nearest to a label:";
    const auto add = [&](const char* what, const std::string& typed, const std::string& computed) {
        if (name.back() != ':') name += ",";
        const bool printed_so = matched && !typed.empty();
        name += std::string(what) + (printed_so ? typed : computed);
        if (matched && typed.empty()) name += " computed";
    };
    add(" U ", typed_[printed_u], format_u(build.rated.u_w_m2k, units_));
    add(" SHGC ", typed_[printed_shgc], two_decimals(build.rated.shgc));
    return name + " (U in " + u_unit(units_) + ")";
}

bool LabelEntry::make(Ui& ui, Session& session, const assess::LabelAnswer& answer,
                      Column& column) const {
    const assess::LabelBuild& build = answer.builds[chosen_];
    const bool matched = answer.standing == assess::LabelStanding::matched;
    const opening::Case today = session.today();
    const bool old_frame = opening::is_wood(today.opening.frame) ||
                           today.opening.installation == opening::Installation::insert;
    const auto remedy = [&](bool insert) {
        opening::Remedy made = assess::label_remedy(build.opening, today, insert);
        made.name = name(build, matched);
        return add_remedy(session, std::move(made));
    };
    const std::string& opening = session.record().name;
    column.space(4);
    column.heading("label.for", opening.empty() ? "For this opening" : "For " + opening, 3);
    ButtonStyle style;
    style.look = ButtonLook::filled;
    if (button(ui, "label.remedy", column.take(touch_px), "A remedy: new frame, shim space foamed",
               style))
        return remedy(false);
    if (old_frame && button(ui, "label.insert", column.take(touch_px),
                            "A remedy: in the old frame, shim space foamed"))
        return remedy(true);
    if (!button(ui, "label.today", column.take(touch_px), "Set it as today's window")) return false;
    house::House next = session.house();
    opening::Case now = today;
    assess::set_label_build(now, build.opening);
    next.openings[static_cast<std::size_t>(next.selected)].today = now.opening;
    session.shown = Shown::today;
    session.edit(std::move(next));
    return true;
}

bool LabelEntry::draw(Ui& ui, Session& session, Column& column) {
    take_units(ui.units);
    column.heading("house.label", "A window by its label");
    ButtonStyle style;
    style.role = Role::toggle;
    style.on = open_;
    if (button(ui, "label.open", column.take(touch_px), "Type a label or a quote", style))
        open_ = !open_;
    bool made = false;
    if (open_) {
        fields(ui, session, column);
        const bool ready = !typed_[printed_u].empty() || !typed_[printed_shgc].empty() ||
                           !typed_[printed_light].empty();
        style = {};
        style.enabled = ready;
        if (!asked_ &&
            button(ui, "label.ask", column.take(touch_px), "Find what it is made of", style))
            start();
        if (asked_ && !search_->answer()) look(ui, column);
        const assess::LabelAnswer* answer = asked_ ? search_->answer() : nullptr;
        if (answer) builds(ui, *answer, column);
        if (answer && chosen_ < answer->builds.size()) {
            beside(ui, answer->builds[chosen_], column);
            made = make(ui, session, *answer, column);
        }
    }
    column.space(14);
    return made;
}

} // namespace shimlight::view
