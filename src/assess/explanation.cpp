// SPDX-License-Identifier: MIT
#include "assess/explanation.hpp"

#include "assess/phrases.hpp"
#include "assess/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::assess {

namespace {

constexpr double w_m2_per_btu = 3.154591; // W/m² in 1 Btu/h·ft²
constexpr double computation_error_k = 1; // estimate, see the header

std::string value_in_words(Kind kind, double value, bool fahrenheit) {
    switch (kind) {
    case Kind::temperature:
        return temperature_in_words(value, fahrenheit);
    case Kind::speed:
        return speed_in_words(value, fahrenheit);
    case Kind::share:
        return percent_in_words(value);
    case Kind::emissivity:
        return "0." + std::to_string(100 + std::lround(100 * value)).substr(1);
    case Kind::heat:
        return fahrenheit ? std::to_string(std::lround(value / w_m2_per_btu)) + "\u00a0Btu/h·ft²"
                          : std::to_string(std::lround(value)) + "\u00a0W/m²";
    case Kind::yes_no:
        break;
    }
    return "";
}

} // namespace

Measured measured(const physics::InfraredReading& reading) {
    const physics::InfraredRange range = physics::infrared_range(reading);
    return {physics::infrared_surface_c(reading.reading_c, reading), range.surface_low_c,
            range.surface_high_c};
}

double left_over_k(double difference_k) {
    constexpr double rounding_k = 1e-9; // far below what a search settles to, far above a double's
    return std::fabs(difference_k) < rounding_k ? 0 : difference_k;
}

double tolerance_of(double range_k) {
    return std::hypot(range_k, computation_error_k);
}

Compared compare_reading(double measured_c, double range_k, double computed_c) {
    const double difference_k = measured_c - computed_c, tolerance_k = tolerance_of(range_k);
    return difference_k < -tolerance_k  ? Compared::colder
           : difference_k > tolerance_k ? Compared::warmer
                                        : Compared::as_computed;
}

SurfaceReading compared(const Measured& measured, double computed_c) {
    SurfaceReading result;
    result.computed_c = computed_c;
    result.difference_k = measured.c - computed_c;
    result.range_k =
        result.difference_k > 0 ? measured.c - measured.low_c : measured.high_c - measured.c;
    result.compared = compare_reading(measured.c, result.range_k, computed_c);
    return result;
}

void tell(Explanation& e, Kind kind, std::string_view word, double difference_k, bool fahrenheit) {
    using namespace phrases;
    const std::string needed = value_in_words(kind, e.needed, fahrenheit);
    const std::string assumed = value_in_words(kind, e.assumed, fahrenheit);
    const std::string left = difference_in_words(std::fabs(e.left_k), fahrenheit);
    if (!e.explains && std::fabs(e.left_k) >= std::fabs(difference_k))
        e.sentence = fill(wrong_way, {word});
    else if (kind == Kind::yes_no)
        e.sentence = fill(e.explains ? there_explains : there_leaves,
                          {word, e.needed < 0.5 ? missing : unseen, left});
    else
        e.sentence = fill(e.explains ? explains : leaves, {word, needed, assumed, left});
}

Explanation explain_emissivity(const physics::InfraredReading& reading, double computed_c,
                               double tolerance_k, bool fahrenheit) {
    constexpr Span possible{0.1, 0.97}; // a coated or bare metal face … dirt, water or tape
    const auto shown = [&](double emissivity) {
        physics::InfraredReading r = reading;
        r.surface_emissivity = emissivity;
        return physics::infrared_surface_c(r.reading_c, r);
    };
    Explanation e;
    e.assumption = "emissivity";
    e.assumed = reading.surface_emissivity;
    e.needed = meet(possible, computed_c, shown);
    e.left_k = left_over_k(shown(e.needed) - computed_c);
    e.explains = std::fabs(e.left_k) <= tolerance_k;
    tell(e, Kind::emissivity, phrases::emissivity, shown(e.assumed) - computed_c, fahrenheit);
    return e;
}

void add(SurfaceReading& reading, Explanation e) {
    auto& all = reading.explanations;
    const auto place = e.explains ? std::find_if(all.begin(), all.end(),
                                                 [](const Explanation& o) { return !o.explains; })
                                  : all.end();
    all.insert(place, std::move(e));
}

void summarise(SurfaceReading& reading, opening::Part part, bool fahrenheit) {
    const std::string name =
        capitalised(std::string(phrases::parts[static_cast<std::size_t>(part)]));
    const std::string range = difference_in_words(reading.range_k, fahrenheit);
    if (reading.compared == Compared::as_computed) {
        reading.sentence = fill(phrases::as_computed, {name, range});
        return;
    }
    const auto explaining = std::count_if(reading.explanations.begin(), reading.explanations.end(),
                                          [](const Explanation& e) { return e.explains; });
    reading.sentence =
        fill(reading.compared == Compared::colder ? phrases::reads_colder : phrases::reads_warmer,
             {name, difference_in_words(std::fabs(reading.difference_k), fahrenheit), range}) +
        fill(explaining == 0   ? phrases::no_assumption
             : explaining == 1 ? phrases::one_assumption
                               : phrases::some_assumptions,
             {std::to_string(explaining)});
}

} // namespace shimlight::assess
