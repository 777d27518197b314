// SPDX-License-Identifier: MIT
// Question `glazing`: centre of glass, declared (EN 673) or detailed (ISO 15099).
#include "door/answer.hpp"
#include "door/glazing_sun.hpp"
#include "physics/glazing.hpp"

#include <array>

namespace shimlight::door {

using physics::GlazingResult;
using physics::GlazingSide;
using physics::GlazingStack;

namespace {

constexpr std::array<std::string_view, 2> methods{"declared", "detailed"};
enum Method { declared, detailed };
constexpr std::array<std::string_view, physics::gas_count> gases{"air", "argon", "krypton", "xenon",
                                                                 "sf6"};

// Accepted ranges.
constexpr Range thickness_m{0.0005, 0.1};
constexpr Range conductivity_w_mk{0.01, 500};
constexpr Range gap_m{0.0005, 1};
constexpr Range tilt_deg{0, 180};
constexpr Range height_m{0.05, 50};
constexpr Range convective_w_m2k{0, 1000};
constexpr Range film_w_m2k{0.01, 1000};

// Defaults: soda-lime glass, vertical, 1 m high (ISO 15099 examples, common practice).
constexpr double usual_conductivity_w_mk = 1.0;
constexpr double usual_tilt_deg = 90;
constexpr double usual_height_m = 1.0;
constexpr double winter_wind_m_s = 5.5;       ///< ISO 15099:2003 winter condition (from memory)
constexpr double declared_outside_w_m2k = 25; ///< EN 673:2011, vertical glass
constexpr double declared_inside_w_m2k = 7.7; ///< the same

struct Sides {
    GlazingSide outside, inside;
    double outside_film_w_m2k = declared_outside_w_m2k;
    double inside_film_w_m2k = declared_inside_w_m2k;
    Warnings warnings;
};

physics::Pane read_pane(ObjectReader pane, GlazingSun& sun) {
    physics::Pane result;
    result.thickness_m = pane.number("thickness_m", thickness_m);
    result.conductivity_w_mk =
        pane.number("conductivity_w_mk", conductivity_w_mk, usual_conductivity_w_mk);
    result.emissivity_out =
        pane.number("emissivity_out", fraction_range, physics::glass_emissivity);
    result.emissivity_in = pane.number("emissivity_in", fraction_range, physics::glass_emissivity);
    sun.read_pane(pane);
    pane.finish();
    return result;
}

physics::GasMixture read_gas(ObjectReader& gap) {
    if (!gap.has("gas")) {
        gap.find("gas");
        gap.reading().assume(gap.path("gas"), {{"air", 1.0}});
        return {};
    }
    physics::GasMixture mixture;
    ObjectReader shares = gap.object("gas");
    for (std::size_t i = 0; i < gases.size(); ++i) {
        mixture.fraction[i] = shares.optional_number(gases[i], fraction_range).value_or(0);
    }
    shares.finish();
    return mixture;
}

physics::Gap read_gap(ObjectReader gap) {
    physics::Gap result;
    result.width_m = gap.number("width_m", gap_m);
    result.gas = read_gas(gap);
    gap.finish();
    return result;
}

GlazingStack read_stack(ObjectReader& question, GlazingSun& sun) {
    GlazingStack stack;
    const ArrayReader panes = question.array("panes", 1, physics::max_panes);
    const ArrayReader gaps = question.array_or_empty("gaps", physics::max_panes - 1);
    stack.pane_count = panes.size();
    for (std::size_t i = 0; i < panes.size(); ++i)
        stack.panes[i] = read_pane(panes.object(i), sun);
    for (std::size_t i = 0; i < gaps.size(); ++i)
        stack.gaps[i] = read_gap(gaps.object(i));
    if (panes.size() > 0 && gaps.size() + 1 != panes.size()) {
        question.reading().fail("/gaps", "has " + std::to_string(gaps.size()) +
                                             " entries; accepted is one fewer than panes");
    }
    stack.tilt_deg = question.number("tilt_deg", tilt_deg, usual_tilt_deg);
    return stack;
}

/// Fields of a side that only the detailed method uses.
struct DetailedFields {
    std::optional<double> wind_m_s, radiant_c, convective_w_m2k;
};

DetailedFields read_detailed_fields(ObjectReader& side, bool outside) {
    DetailedFields fields;
    if (outside) fields.wind_m_s = side.optional_number("wind_m_s", speed_range_m_s);
    fields.radiant_c = side.optional_number("radiant_c", air_range_c);
    fields.convective_w_m2k = side.optional_number("convective_w_m2k", convective_w_m2k);
    return fields;
}

/// The declared method: films only; what belongs to the other method has no effect and is told so.
double read_declared_side(ObjectReader side, bool outside, Warnings& warnings) {
    const double film = side.number("film_w_m2k", film_w_m2k,
                                    outside ? declared_outside_w_m2k : declared_inside_w_m2k);
    side.optional_number("air_c", air_range_c);
    const DetailedFields unused = read_detailed_fields(side, outside);
    if (warnings.empty() && (unused.wind_m_s || unused.radiant_c || unused.convective_w_m2k)) {
        warnings.push_back("The declared method works with films only: wind, radiant temperature "
                           "and convection have no effect.");
    }
    side.finish();
    return film;
}

GlazingSide read_detailed_side(ObjectReader side, bool outside, Warnings& warnings) {
    GlazingSide result;
    result.air_c = side.number("air_c", air_range_c);
    const DetailedFields fields = read_detailed_fields(side, outside);
    result.radiant_c = fields.radiant_c;
    result.convective_w_m2k = fields.convective_w_m2k;
    result.wind_m_s = fields.wind_m_s.value_or(winter_wind_m_s);
    if (!fields.radiant_c) side.reading().assume(side.path("radiant_c"), result.air_c);
    if (outside && !fields.wind_m_s && !fields.convective_w_m2k) {
        side.reading().assume(side.path("wind_m_s"), winter_wind_m_s);
    }
    if (outside && fields.wind_m_s && fields.convective_w_m2k) {
        warnings.push_back("The wind has no effect where convective_w_m2k is given.");
    }
    if (side.has("film_w_m2k")) {
        side.reading().fail(side.path("film_w_m2k"),
                            "belongs to the declared method; accepted here is convective_w_m2k");
    }
    side.find("film_w_m2k");
    side.finish();
    return result;
}

Sides read_sides(ObjectReader& question, Method method) {
    Sides sides;
    if (method == declared) {
        sides.outside_film_w_m2k =
            read_declared_side(question.object_or_empty("outside"), true, sides.warnings);
        sides.inside_film_w_m2k =
            read_declared_side(question.object_or_empty("inside"), false, sides.warnings);
    } else {
        sides.outside = read_detailed_side(question.object("outside"), true, sides.warnings);
        sides.inside = read_detailed_side(question.object("inside"), false, sides.warnings);
    }
    return sides;
}

Json film(const physics::FilmHeat& heat) {
    return object(
        {{"convective_w_m2k", heat.convective_w_m2k}, {"radiative_w_m2k", heat.radiative_w_m2k}});
}

Json write(const GlazingResult& result, std::size_t pane_count, Method method,
           const Warnings& more) {
    Json answer = object({{"u_w_m2k", result.u_w_m2k}, {"r_m2k_w", result.r_m2k_w}});
    if (method == detailed) answer["flux_w_m2"] = result.flux_w_m2;
    Json& faces = answer["faces_c"] = Json::array();
    for (std::size_t i = 0; i < 2 * pane_count; ++i)
        faces.push_back(result.faces_c[i]);
    Json& gaps = answer["gaps"] = Json::array();
    for (std::size_t i = 0; i + 1 < pane_count; ++i) {
        gaps.push_back(object({{"convection_w_m2", result.gaps[i].convection_w_m2},
                               {"radiation_w_m2", result.gaps[i].radiation_w_m2},
                               {"nusselt", result.gaps[i].nusselt}}));
    }
    answer["inside_film"] = film(result.inside_film);
    answer["outside_film"] = film(result.outside_film);
    Warnings warnings = result.warnings;
    warnings.insert(warnings.end(), more.begin(), more.end());
    if (!result.converged) warnings.push_back("The heat balance did not settle.");
    answer["warnings"] = sentences(warnings);
    return answer;
}

} // namespace

Answer ask_glazing(ObjectReader& question) {
    const auto method = static_cast<Method>(question.choice("method", methods));
    GlazingSun sun;
    GlazingStack stack = read_stack(question, sun);
    sun.read(question);
    if (method == detailed) {
        stack.height_m = question.number("height_m", height_m, usual_height_m);
    } else {
        question.optional_number("height_m", height_m); // has no effect on the declared method
    }
    const Sides sides = read_sides(question, method);
    if (auto fault = settle(question)) return *fault;

    if (method == declared) {
        const double outside = sides.outside_film_w_m2k, inside = sides.inside_film_w_m2k;
        if (auto fault = physics::glazing_declared_problem(stack, outside, inside)) return *fault;
        Json answer = write(physics::glazing_declared(stack, outside, inside), stack.pane_count,
                            method, sides.warnings);
        sun.answer_declared(stack, answer);
        return answer;
    }
    if (auto fault = physics::glazing_detailed_problem(stack, sides.outside, sides.inside)) {
        return *fault;
    }
    Json answer = write(physics::glazing_detailed(stack, sides.outside, sides.inside),
                        stack.pane_count, method, sides.warnings);
    sun.answer_detailed(stack, sides.outside, sides.inside, answer);
    return answer;
}

} // namespace shimlight::door
