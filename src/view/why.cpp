// SPDX-License-Identifier: MIT
// What a figure depends on, and the nodes that open its card.
#include "view/why.hpp"

#include "view/range_words.hpp"

#include "assess/estimates.hpp"
#include "assess/leak.hpp"
#include "assess/quick_seat.hpp"
#include "assess/storm_panel.hpp"
#include "opening/covered_glass.hpp"
#include "opening/cut.hpp"
#include "physics/moist_air.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>

namespace shimlight::view {
namespace {

using opening::Quantity;

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double try_c = 3, try_f = 5; // degrees of a temperature, larger than any rounding
// Cuts take most of a step's time; several are tried while a frame has time for them.
constexpr std::chrono::milliseconds frame_share{12};
constexpr std::size_t most_effects = 6;
constexpr double worth_showing = 0.02; // of the largest effect

double size_of(const Effect& e) {
    return std::max(std::isfinite(e.up) ? std::fabs(e.up) : 0,
                    std::isfinite(e.down) ? std::fabs(e.down) : 0);
}

bool larger(const Effect& a, const Effect& b) {
    return size_of(a) > size_of(b);
}

/// Money and degree days only move what is counted by the year.
bool may_matter(const opening::Field& field, std::string_view key) {
    return field.scope != opening::Scope::running || key.substr(0, 4) == "year";
}

} // namespace

double try_step(const opening::Field& field, Units units, const Trade& trade) {
    switch (field.quantity) {
    case Quantity::choice:
    case Quantity::yes_no:
    case Quantity::count:
        return 0;
    case Quantity::temperature_c:
        return units == Units::us ? try_f / 1.8 : try_c;
    case Quantity::price_per_kwh:
        if (price_step(trade) > 0) return price_step(trade) / trade.fuel_kwh;
        [[fallthrough]];
    default:
        return step_si(field, units);
    }
}

std::optional<double> quick_figure(const assess::Figure& figure, const opening::Case& changed,
                                   const opening::Case& now, const assess::Assessment& result) {
    using assess::Needs;
    assess::Assessment a;
    switch (figure.needs) {
    default:
        return std::nullopt;
    case Needs::storm:
    case Needs::glass:
        a.glass = opening::covered_glass(changed).glass;
        a.u_centre_w_m2k = a.glass.u_w_m2k;
        if (figure.needs == Needs::storm)
            if (const auto storm = assess::storm_surface(changed, a.glass))
                a.parts.push_back(*storm);
        break;
    case Needs::sun: {
        const assess::SunStraightOn sun = assess::sun_straight_on(changed.opening);
        a.sun.shgc = sun.shgc;
        a.sun.light = sun.light;
        break;
    }
    case Needs::room:
        a.dew_point_c = physics::dew_point_c(changed.room.air_c, changed.room.rh);
        break;
    case Needs::leak:
        a.leak = assess::leak(changed);
        break;
    case Needs::seat:
        a.seat = assess::quick_seat(changed, now, result);
    }
    return figure.read(changed, a);
}

double section_figure(const assess::Figure& figure, const opening::Case& changed,
                      const assess::Assessment& now, assess::Assessor& drafts) {
    assess::Budget budget;
    budget.moving = budget.around = true;
    budget.seen = false;
    budget.cuts = assess::cuts_of(figure, now);
    return figure.read(changed, drafts.update(changed, budget));
}

namespace {

/// How far a figure may be off where inputs are engineering estimates; empty for the others.
std::string ends_words(std::string_view key, const opening::Case& c, const assess::Assessment& now,
                       Units units) {
    std::string words = card_case(key, now, units);
    if (key != "ankles" && key != "shim_flow" && key != "heat") return words;
    const assess::EstimatedResults r = assess::estimate_ranges(c, now).together;
    const auto told = [&](double assess::ResultRange::*end) {
        return key == "ankles"      ? format_percent(r.bothered_pct.*end / 100)
               : key == "shim_flow" ? format_flow(r.shim_m3_s.*end, units)
                                    : format_heat(r.heat_w.*end, units);
    };
    return words +
           " With its estimated inputs between their ends: " + told(&assess::ResultRange::low) +
           " to " + told(&assess::ResultRange::high) + ".";
}

} // namespace

void Why::show(std::string_view key, Shown of, std::string_view number) {
    const std::string kept(key); // may be this card's own
    key_ = kept;
    number_ = number;
    told_.clear();
    of_ = of;
    fresh_ = true;
    revision_ = -1;
    scroll_.to_top();
}

void Why::close() {
    key_.clear();
    drafts_.reset();
}

/// The figure of a changed case, the first of the case itself.
double Why::figure_of(const opening::Case& changed, const opening::Case& c,
                      const assess::Assessment& now, const assess::Figure& figure) {
    if (const auto quick = quick_figure(figure, changed, c, now)) return *quick;
    if (!drafts_) drafts_ = std::make_unique<assess::Assessor>();
    return section_figure(figure, changed, now, *drafts_);
}

/// Tries the next half step of a lever, or goes on with it; false when all are done.
bool Why::try_next(const opening::Case& c, const assess::Assessment& now,
                   const assess::Figure& figure, Units units, const Trade& trade) {
    const auto all = opening::fields();
    if (!base_) {
        base_ = figure_of(c, c, now, figure);
        return true;
    }
    for (; next_ < 2 * all.size(); ++next_) {
        const opening::Field& field = all[next_ / 2];
        const double step = try_step(field, units, trade);
        if (step <= 0 || !applies(field, c) || !may_matter(field, figure.key)) continue;
        const bool up = next_ % 2 == 0;
        const double wanted = field.get(c) + (up ? step : -step);
        opening::Case changed = c;
        opening::set_field(changed, field, wanted);
        double effect = none;
        if (std::fabs(field.get(changed) - wanted) < 1e-9) {
            effect = figure_of(changed, c, now, figure) - *base_;
        }
        if (up) effects_.push_back({&field, step, effect, none});
        if (!up) effects_.back().down = effect;
        ++next_;
        return true;
    }
    return false;
}

void Why::compute(Ui& ui, const Session& session) {
    const assess::Figure* found = tried_figure(key_);
    if (!found) return;
    const assess::Figure& figure = *found;
    if (revision_ != session.revision() || units_ != ui.units) {
        revision_ = session.revision();
        units_ = ui.units;
        next_ = 0;
        drafts_.reset();
        base_.reset();
        effects_.clear();
        ends_.clear();
    }
    const opening::Case c = session.shown_case(of_);
    const assess::Assessment& now = session.result(of_);
    if (ends_.empty()) ends_ = ends_words(key_, c, now, ui.units);
    const bool quick = quick_figure(figure, c, c, now).has_value();
    if (fresh_ && !quick) { // the card first
        ui.wishes.another_frame = true;
        return;
    }
    const auto started = std::chrono::steady_clock::now();
    const Trade trade = trade_of(session.house());
    while (try_next(c, now, figure, ui.units, trade))
        if (!quick && std::chrono::steady_clock::now() - started > frame_share) break;
    if (next_ < 2 * opening::fields().size()) {
        ui.wishes.another_frame = true;
        return;
    }
    drafts_.reset();
    std::sort(effects_.begin(), effects_.end(), larger);
    const auto too_small = [&](const Effect& e) {
        const std::string told = figure_difference(figure, size_of(e), ui.units, trade);
        const std::string digits = told.substr(0, told.find("\xE2\x80\x89")); // up to the unit
        return digits.find_first_of("123456789") == std::string::npos ||
               size_of(e) < worth_showing * size_of(effects_[0]);
    };
    while (!effects_.empty() && (effects_.size() > most_effects || too_small(effects_.back())))
        effects_.pop_back();
}

void figure_touch(Ui& ui, std::string_view id, Box touch, std::string_view key, Shown of) {
    if (touch_area(ui, std::string(id) + ".touch", touch).pressed && ui.why) {
        ui.why->show(key, of, id);
        ui.wishes.another_frame = true;
    }
}

void figure(Ui& ui, std::string_view id, Box box, std::string_view name, std::string_view value,
            std::string_view key, Shown of) {
    MirrorNode node;
    node.id = id;
    node.role = Role::figure;
    node.name = name;
    node.value = value;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
    focus_ring(ui, id, box);
    if (!ui.mirror.pressed(id) || !ui.why) return;
    ui.why->show(key, of, id);
    ui.wishes.another_frame = true;
}

} // namespace shimlight::view
