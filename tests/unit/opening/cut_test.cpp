// SPDX-License-Identifier: MIT
#include "opening/covered_glass.hpp"
#include "opening/cut.hpp"
#include "opening/field_table.hpp"
#include "opening/films.hpp"
#include "opening/remedy.hpp"
#include "section/field.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <random>
#include <string>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

constexpr Position sides[] = {Position::head, Position::jamb, Position::sill};
constexpr Position positions[] = {Position::head, Position::jamb, Position::sill,
                                  Position::meeting_rail};
constexpr Surroundings surroundings[] = {Surroundings::wall, Surroundings::none};

// Far from the edge the cut must repeat the one-dimensional balance but for what is left of the
// edge after 170 mm of glass. It dies away over sqrt(k t / h) per pane: 35 mm for two panes, 45 mm
// for the middle pane between coated argon gaps, 70 mm for one of 6 mm between krypton gaps: 9 %
// are left there of an edge that is off by up to a third. Relative to the difference of the airs.
constexpr double one_dimensional = 0.005, one_dimensional_extreme = 0.03;
// Heat flows of two slightly different sections compared, relative; drafts differ by up to 1 %.
constexpr double normal_noise = 0.002;
// Between the air spaces of panels the glass of the sash is as good as cut off: up to 70 mm for an
// e-fold with thick panes and low-e panels, beside bare aluminium half of the airs' difference.
constexpr double one_dimensional_panels = 0.06;
// The cut's wide air spaces conduct along the glass as they do across it, and with krypton between
// thick panes that makes 80 mm. What is left then must grow towards the edge as that of a mirrored
// e-fold of at most 90 mm, cosh(60 / 90), and be no more than twice e^(-170 / 80) of half of the
// airs' difference.
constexpr double mirrored_edge = 0.12, nearer_m = 0.06, grows_nearer = 1.23;

Case random_case(std::mt19937& random) {
    Case c;
    for (const Field& f : fields()) {
        std::uniform_real_distribution<double> value(f.min, f.max);
        set_field(c, f, value(random));
    }
    return c;
}

physics::GlazingResult balance(const Case& c) {
    return covered_glass(c).glass;
}

struct Solved {
    Cut cut;
    section::Field field;
};

Solved solve(const Case& c, Position position, Surroundings around = Surroundings::wall,
             section::Accuracy accuracy = section::Accuracy::draft) {
    Solved solved{cut(c, position, balance(c), around), {}};
    auto result = section::solve(solved.cut.painting, accuracy);
    if (!ok(result)) FAIL(problem(result).path << ": " << problem(result).message);
    solved.field = std::move(value(result));
    return solved;
}

double inside_heat_w_m(const Solved& solved) {
    double heat = 0;
    for (std::size_t air = 0; air < solved.field.heat_w_m.size(); ++air)
        if (solved.cut.air_is_inside[air]) heat += solved.field.heat_w_m[air];
    return heat;
}

double coldest_c(const Solved& solved, Part part) {
    double coldest = 1e9;
    for (const section::SurfaceFace& face : solved.field.faces)
        if (solved.cut.air_is_inside[static_cast<std::size_t>(face.air)] &&
            solved.cut.pieces[static_cast<std::size_t>(face.region)].part == part)
            coldest = std::min(coldest, face.temperature_c);
    return coldest;
}

/// The topmost piece at a point.
const Piece& piece_at(const Cut& cut, section::Point at) {
    std::size_t top = 0;
    for (std::size_t i = 0; i < cut.painting.regions.size(); ++i) {
        const section::Rect& r = cut.painting.regions[i].rect;
        if (at.x_m >= r.x0_m && at.x_m < r.x1_m && at.y_m >= r.y0_m && at.y_m < r.y1_m) top = i;
    }
    return cut.pieces[top];
}

} // namespace

TEST_CASE("any window at any place can be solved, within the temperatures of the airs") {
    std::mt19937 random(3);
    for (int i = 0; i < 40; ++i) {
        const Case c = random_case(random);
        for (const Position position : positions) {
            for (const Surroundings around : surroundings) {
                const Solved s = solve(c, position, around);
                CHECK(s.cut.pieces.size() == s.cut.painting.regions.size());
                CHECK(s.cut.air_is_inside.size() == s.cut.painting.airs.size());
                CHECK(s.field.converged);
                const double coldest_c = std::min(
                    outside_environment_c(c.weather),
                    outside_environment_c(c.weather, balance(c).outside_film, c.opening.tilt_deg));
                // Air that creeps in is as warm as outdoor air, under any sky.
                const double low = std::min(coldest_c, c.room.air_c);
                const double high = std::max(c.weather.outside_c, c.room.air_c);
                for (const double cell : s.field.cell_c) {
                    if (cell >= low - 1e-6 && cell <= high + 1e-6) continue;
                    FAIL("cell of " << cell << " between airs of " << low << " and " << high);
                }
            }
        }
    }
}

TEST_CASE("far from its edge the glass is as the one-dimensional balance says") {
    std::mt19937 random(4);
    for (int i = 0; i < 20; ++i) {
        Case c = random_case(random);
        // Creeping air carries its cold into the sash and a little way up the glass.
        c.room.storey = Storey::by_height;
        c.room.shelter = c.room.height_above_neutral_m = 0;
        // Between airs of nearly one temperature wide air spaces hardly conduct, and the edge is
        // felt farther than the glass is drawn.
        c.weather.outside_c = std::min(c.weather.outside_c, c.room.air_c - 10);
        const physics::GlazingResult glass = balance(c);
        const bool panels =
            c.opening.glazing.storm != Storm::none || c.opening.glazing.panel != Panel::none;
        const bool ordinary = c.opening.glazing.pane_thickness_m < 0.0035 &&
                              c.opening.glazing.panes < 3 &&
                              c.opening.glazing.gas <= physics::Gas::argon;
        const double tolerance_k = (panels     ? one_dimensional_panels
                                    : ordinary ? one_dimensional
                                               : one_dimensional_extreme) *
                                   std::fabs(c.room.air_c - c.weather.outside_c);
        for (const Position position : positions) {
            // Between a storm panel and the lower sash the air is 0.1 m deep: its edge reaches
            // farther than the glass that is drawn.
            if (position == Position::meeting_rail && c.opening.glazing.storm != Storm::none)
                continue;
            const Solved s = solve(c, position);
            const std::size_t faces = 2 * glazing_stack(c.opening).pane_count;
            REQUIRE(s.cut.glass_face_x_m.size() == faces);
            CHECK(std::is_sorted(s.cut.glass_face_x_m.begin(), s.cut.glass_face_x_m.end()));
            for (std::size_t face = 0; face < faces; ++face) {
                CAPTURE(face);
                const auto off_k = [&](double y_m) {
                    return std::fabs(s.field.probe_c({s.cut.glass_face_x_m[face], y_m}) -
                                     glass.faces_c[face]);
                };
                const double centre_m = s.cut.glass_centre_m, off = off_k(centre_m);
                if (off < tolerance_k || !panels) {
                    CHECK(off < tolerance_k);
                    continue;
                }
                const double edge_k = mirrored_edge * (c.room.air_c - c.weather.outside_c);
                CHECK(off < edge_k);
                CHECK(off_k(centre_m + std::copysign(nearer_m, s.cut.glass_edge_m - centre_m)) >
                      grows_nearer * off);
            }
        }
    }
}

TEST_CASE("the wall lies below the glass at sill and jamb, above it at the head") {
    const Case c;
    const physics::GlazingResult glass = balance(c);
    for (const Position position : sides) {
        const Cut there = cut(c, position, glass);
        const bool head = position == Position::head;
        CHECK((there.glass_centre_m < there.glass_edge_m) == head);
        CHECK((there.frame_back_m > there.glass_edge_m) == head);
        CHECK(std::fabs(there.glass_centre_m - there.glass_edge_m) >= 0.15);
        CHECK(there.painting.height_m > 0.25);
        CHECK(there.painting.height_m < 0.45);
    }
}

TEST_CASE("every part of the inside surface is there, in the cut with the wall only") {
    for (const FrameMaterial frame :
         {FrameMaterial::wood, FrameMaterial::vinyl, FrameMaterial::aluminium}) {
        Case c;
        c.opening.frame = frame;
        for (const Position position : sides) {
            const Solved installed = solve(c, position);
            for (const Part part :
                 {Part::glass_centre, Part::glass_edge, Part::frame, Part::casing, Part::wall})
                CHECK(coldest_c(installed, part) < c.room.air_c);
            const Solved alone = solve(c, position, Surroundings::none);
            CHECK(coldest_c(alone, Part::casing) > 1e6);
            CHECK(coldest_c(alone, Part::wall) > 1e6);
        }
    }
}

TEST_CASE("the leak's path leads from outdoor air through the shim space into the room") {
    for (const Position position : sides) {
        Case c;
        const Cut there = cut(c, position, balance(c));
        REQUIRE(there.leak_path.size() == 6);
        CHECK(piece_at(there, there.leak_path.front()).material == Material::outdoor_air);
        CHECK(piece_at(there, there.leak_path.back()).material == Material::indoor_air);
        const section::Point middle = {(there.leak_path[2].x_m + there.leak_path[3].x_m) / 2,
                                       there.leak_path[2].y_m};
        CHECK(piece_at(there, middle).name == "shim space");
    }
}

TEST_CASE("at the meeting rail two sashes stand one behind the other") {
    for (const Field& f : fields()) {
        if (f.key != "frame") continue;
        for (std::size_t frame = 0; frame < f.choices.size(); ++frame) {
            Case c;
            set_field(c, f, static_cast<double>(frame));
            const Solved s = solve(c, Position::meeting_rail);
            const double height_m = s.cut.painting.height_m;
            const double x_m = s.cut.glass_face_x_m.front() + 0.001;
            CHECK(piece_at(s.cut, {x_m, 0.01}).material == Material::glass);
            CHECK(piece_at(s.cut, {x_m, height_m - 0.01}).material == Material::indoor_air);
            CHECK(s.cut.sash_path.size() == 4);
            CHECK(piece_at(s.cut, s.cut.sash_path.front()).material == Material::outdoor_air);
            CHECK(piece_at(s.cut, s.cut.sash_path.back()).material == Material::indoor_air);
            CHECK(coldest_c(s, Part::frame) > c.weather.outside_c);
            CHECK(s.cut.glass_m < height_m);
        }
    }
}

TEST_CASE("what fills the shim space is what is painted there") {
    const std::pair<ShimFill, Material> fills[] = {{ShimFill::open, Material::cavity},
                                                   {ShimFill::stuffed, Material::stuffing},
                                                   {ShimFill::backer_rod, Material::cavity},
                                                   {ShimFill::foamed, Material::foam},
                                                   {ShimFill::partly_foamed, Material::cavity}};
    for (const auto& [fill, material] : fills) {
        Case c;
        c.opening.shim.fill = fill;
        const Cut there = cut(c, Position::jamb, balance(c));
        const auto is_shim = [](const Piece& piece) { return piece.name == "shim space"; };
        const auto piece = std::find_if(there.pieces.begin(), there.pieces.end(), is_shim);
        REQUIRE(piece != there.pieces.end());
        CHECK(piece->material == material);
    }
}

TEST_CASE("foam in the joint never adds heat loss, air moving or not") {
    std::mt19937 random(5);
    for (int i = 0; i < 12; ++i) {
        Case c = random_case(random);
        c.weather.outside_c = -std::fabs(c.weather.outside_c);
        // Below the neutral level, into the wind: outdoor air, if any, comes in.
        c.room.facade = Facade::windward;
        c.room.storey = Storey::by_height;
        c.room.height_above_neutral_m = -std::fabs(c.room.height_above_neutral_m);
        if (i % 2 == 0) c.weather.wind_m_s = c.room.height_above_neutral_m = 0;
        Case foamed = c;
        foamed.opening.shim.fill = ShimFill::foamed;
        const auto heat_w_m = [](const Case& one, Position position) {
            return inside_heat_w_m(
                solve(one, position, Surroundings::wall, section::Accuracy::normal));
        };
        for (const ShimFill fill :
             {ShimFill::open, ShimFill::stuffed, ShimFill::backer_rod, ShimFill::partly_foamed}) {
            c.opening.shim.fill = fill;
            for (const Position position : positions)
                CHECK(heat_w_m(foamed, position) <= heat_w_m(c, position) * (1 + normal_noise));
        }
    }
}

TEST_CASE("air creeps past the sash and through an open joint, when something drives it") {
    Case c;
    const auto streams = [](const Case& one, Surroundings around = Surroundings::wall) {
        return cut(one, Position::sill, balance(one), around).painting.streams.size();
    };
    CHECK(streams(c) == 2);
    CHECK(streams(c, Surroundings::none) == 0);
    c.opening.shim.fill = ShimFill::stuffed;
    CHECK(streams(c) == 1);
    c.opening.shim.fill = ShimFill::open;
    c.weather.wind_m_s = c.room.height_above_neutral_m = 0;
    CHECK(streams(c) == 0);
}

TEST_CASE("each part of a better window loses less: emissivity, panes, spacer, storm, frame") {
    Case c;
    c.opening.glazing.panes = 2;
    c.opening.glazing.coating = Coating::face3;
    const auto heat = [](const Case& one) { return inside_heat_w_m(solve(one, Position::sill)); };
    const double base = heat(c);
    Case dull = c, triple = c, foam_spacer = c, storm = c, metal = c;
    dull.opening.glazing.emissivity = 0.4;
    triple.opening.glazing.panes = 3;
    foam_spacer.opening.glazing.spacer = SpacerKind::foam;
    storm.opening.glazing.storm = Storm::clear;
    metal.opening.frame = FrameMaterial::aluminium;
    CHECK(heat(dull) > base);
    CHECK(heat(triple) < base);
    CHECK(heat(foam_spacer) < base);
    CHECK(heat(storm) < base);
    CHECK(heat(metal) > base);
}

TEST_CASE("airs of one temperature are no trouble") {
    Case c;
    c.opening.glazing.panes = 2;
    c.opening.glazing.storm = Storm::low_e;
    c.weather.outside_c = c.room.air_c = 20;
    const Solved s = solve(c, Position::sill);
    CHECK(std::fabs(inside_heat_w_m(s)) < 1e-6);
}

TEST_CASE("the undisturbed wall is a sum of strips") {
    Case c;
    // By hand: films 1/7.7 and 1/outside, boards 0.0127/0.16 + 0.0127/0.106 + 0.013/0.093.
    const double around = 1 / 7.7 + 0.0127 / 0.16 + 0.0127 / 0.106 + 0.013 / 0.093;
    c.weather.wind_m_s = 4;
    const double outside_film = cut(c, Position::jamb, balance(c)).painting.airs[0].film_w_m2k;
    CHECK(outside_film == doctest::Approx(24).epsilon(0.05)); // ISO 6946: 25 at 4 m/s
    const double insulated = 1 / (around + 1 / outside_film + 0.089 / 0.042);
    const double stud = 1 / (around + 1 / outside_film + 0.089 / 0.13);
    CHECK(undisturbed_wall_w_mk(c, Position::jamb) ==
          doctest::Approx(0.060 * insulated + 0.076 * stud).epsilon(1e-9));
    CHECK(undisturbed_wall_w_mk(c, Position::sill) ==
          doctest::Approx(0.060 * insulated + 0.038 * stud).epsilon(1e-9));
}
