// SPDX-License-Identifier: MIT
#include "door/glazing_sun.hpp"
#include "door/answer.hpp"

namespace shimlight::door {

namespace {

constexpr Range angle_deg{0, 90};
constexpr Range sun_w_m2{1, 1400};    ///< above the atmosphere: 1367
constexpr double rated_w_m2 = 783;    ///< North American rating of solar gain (from memory)
constexpr double straight_on_deg = 0; ///< likewise, and EN 410

} // namespace

void GlazingSun::read_band(ObjectReader& pane, std::string_view name, Band& band) {
    if (!pane.has(name)) {
        pane.find(name);
        return;
    }
    ObjectReader optics = pane.object(name);
    physics::PaneOptics read;
    read.transmittance = optics.number("transmittance", fraction_range);
    read.reflectance_out = optics.number("reflectance_out", fraction_range);
    read.reflectance_in = optics.number("reflectance_in", fraction_range, read.reflectance_out);
    for (const double reflectance : {read.reflectance_out, read.reflectance_in}) {
        if (read.transmittance + reflectance > 1) {
            pane.reading().fail(pane.path(name), "lets through and reflects more than there is; "
                                                 "accepted is a sum of at most 1");
        }
    }
    optics.finish();
    if (band.known < band.panes.size()) band.panes[band.known++] = read;
}

void GlazingSun::read_pane(ObjectReader& pane) {
    ++count_;
    read_band(pane, "solar", solar_);
    read_band(pane, "light", light_);
}

void GlazingSun::check_band(ObjectReader& question, std::string_view name, const Band& band) const {
    if (band.known == 0 || band.known == count_) return;
    question.reading().fail(
        "/panes", "say of \"" + std::string(name) + "\" in " + std::to_string(band.known) + " of " +
                      std::to_string(count_) + "; accepted is in all or in none");
}

void GlazingSun::read(ObjectReader& question) {
    check_band(question, "solar", solar_);
    check_band(question, "light", light_);
    const bool asked = solar_.known + light_.known > 0;
    if (!asked && !question.has("sun")) {
        question.find("sun");
        return;
    }
    ObjectReader sun = question.object_or_empty("sun");
    diffuse_ = sun.yes_no("diffuse", false);
    angle_deg_ = sun.number("angle_deg", angle_deg, straight_on_deg);
    sun_w_m2_ = sun.number("w_m2", sun_w_m2, rated_w_m2);
    sun.finish();
}

physics::StackOptics GlazingSun::through(const Band& band) const {
    if (diffuse_) return physics::diffuse_through_panes(band.panes, count_);
    if (angle_deg_ == 0) return physics::through_panes(band.panes, count_);
    return physics::through_panes_at(band.panes, count_, angle_deg_);
}

void GlazingSun::write(const physics::StackOptics& sun, const physics::SolarGain& gain,
                       Json& answer) const {
    Json& solar = answer["solar"] =
        object({{"transmittance", sun.transmittance}, {"reflectance", sun.reflectance}});
    Json& absorbed = solar["absorbed"] = Json::array();
    for (std::size_t k = 0; k < count_; ++k)
        absorbed.push_back(sun.absorbed[k]);
    solar["inwards"] = gain.inwards;
    solar["shgc"] = gain.total();
}

void GlazingSun::answer_declared(const physics::GlazingStack& stack, Json& answer) const {
    if (is_told(solar_)) {
        const physics::StackOptics sun = through(solar_);
        write(sun, physics::solar_gain_declared(sun, stack), answer);
    }
    answer_light(answer);
}

void GlazingSun::answer_detailed(const physics::GlazingStack& stack,
                                 const physics::GlazingSide& outside,
                                 const physics::GlazingSide& inside, Json& answer) const {
    if (is_told(solar_)) {
        const physics::StackOptics sun = through(solar_);
        write(sun, physics::solar_gain_detailed(sun, stack, outside, inside, sun_w_m2_), answer);
    }
    answer_light(answer);
}

void GlazingSun::answer_light(Json& answer) const {
    if (!is_told(light_)) return;
    const physics::StackOptics light = through(light_);
    answer["light"] =
        object({{"transmittance", light.transmittance}, {"reflectance", light.reflectance}});
}

} // namespace shimlight::door
