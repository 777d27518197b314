// SPDX-License-Identifier: MIT
#include "assess/solve_memory.hpp"

#include <cmath>

namespace shimlight::assess {

namespace {

// Airs nearer than this give no heat flow to measure a conductance by, K.
constexpr double measurable_k = 0.5;
// The joint's air is found when the next better value is this near, K: it moves the coldest
// surface by a few hundredths.
constexpr double settled_k = 0.1;
// The answer of the wood to the joint's air is linear: two solves measure it, the third uses it.
constexpr int most_tries = 4;

double inside_heat_w_m(const SolvedCut& solved) {
    double heat_w_m = 0;
    for (std::size_t air = 0; air < solved.field.heat_w_m.size(); ++air)
        if (solved.cut.air_is_inside[air]) heat_w_m += solved.field.heat_w_m[air];
    return heat_w_m;
}

/// Heat from the solid into the joint's air.
double joint_heat_of(const SolvedCut& solved) {
    return -solved.field.heat_w_m[static_cast<std::size_t>(solved.cut.joint_air)];
}

double air_c(const opening::Cut& cut, int air) {
    return cut.painting.airs[static_cast<std::size_t>(air)].temperature_c;
}

double difference_k(const opening::Cut& cut) {
    return air_c(cut, cut.inside_air) - air_c(cut, cut.outside_air);
}

/// The same but for the temperature of the joint's air.
bool same_but_joint(const opening::Cut& a, const opening::Cut& b) {
    return a.joint_air == b.joint_air && same_painting(a.painting, b.painting, a.joint_air);
}

} // namespace

double& Slot::joint_air_c(opening::Cut& cut) const {
    return cut.painting.airs[static_cast<std::size_t>(cut.joint_air)].temperature_c;
}

double Slot::joint_air_c(const opening::Cut& cut) const {
    return air_c(cut, cut.joint_air);
}

void Slot::guess_joint_air() {
    if (wanted_.joint_air < 0) return;
    const double free_c =
        air_c(wanted_, wanted_.outside_air) + joint_free_share_ * difference_k(wanted_);
    joint_air_c(wanted_) = opening::stream_c(stream_, {joint_conductance_w_mk_, free_c});
}

void Slot::want(const opening::Case& c, const physics::GlazingResult& glass) {
    opening::Cut next = opening::cut(c, position_, glass, surroundings_);
    if (!same_but_joint(next, wanted_)) tries_ = 0;
    wanted_ = std::move(next);
    glass_u_w_m2k_ = glass.u_w_m2k;
    stream_ = {};
    undisturbed_w_mk_ = 0;
    if (surroundings_ == opening::Surroundings::wall) {
        stream_ = opening::joint_stream(c);
        undisturbed_w_mk_ = opening::undisturbed_wall_w_mk(c, position_);
    }
    failed_ = failed_ && tries_ > 0;
    guess_joint_air();
}

bool Slot::fresh(section::Accuracy least) const {
    if (failed_) return true;
    if (!solved_ || accuracy_ < least || !same_but_joint(solved_->cut, wanted_)) return false;
    if (wanted_.joint_air < 0 || tries_ >= most_tries) return true;
    return std::fabs(joint_air_c(solved_->cut) - joint_air_c(wanted_)) <= settled_k;
}

void Slot::read_excess() {
    const double glass_m = std::fabs(wanted_.glass_centre_m - wanted_.glass_edge_m);
    sight_m_ = wanted_.painting.height_m - glass_m;
    const double between_k = difference_k(wanted_);
    if (std::fabs(between_k) < measurable_k) return;
    excess_w_mk_ =
        inside_heat_w_m(*solved_) / between_k - glass_u_w_m2k_ * glass_m - undisturbed_w_mk_;
}

/// Measures how the wood answers to the joint's air, and from it the air's better temperature.
void Slot::read_joint(const SolvedCut* before) {
    joint_heat_w_m_ = 0;
    if (wanted_.joint_air < 0) return;
    joint_heat_w_m_ = joint_heat_of(*solved_);
    const double here_c = joint_air_c(solved_->cut);
    if (before && same_but_joint(before->cut, wanted_)) {
        const double warmer_k = here_c - joint_air_c(before->cut);
        const double slope = (joint_heat_of(*before) - joint_heat_w_m_) / warmer_k;
        if (std::fabs(warmer_k) > settled_k && slope > 0) joint_conductance_w_mk_ = slope;
    }
    const double free_c = here_c + joint_heat_w_m_ / joint_conductance_w_mk_;
    const double between_k = difference_k(wanted_);
    if (std::fabs(between_k) >= measurable_k)
        joint_free_share_ = (free_c - air_c(wanted_, wanted_.outside_air)) / between_k;
    guess_joint_air();
}

void Slot::solve(section::Accuracy accuracy) {
    const std::shared_ptr<const SolvedCut> before = solved_;
    Result<section::Field> result =
        section::solve(wanted_.painting, accuracy, before ? &before->field : nullptr);
    ++tries_;
    failed_ = !ok(result);
    if (failed_) return;
    const bool comparable = accuracy == accuracy_;
    solved_ = std::make_shared<const SolvedCut>(SolvedCut{wanted_, std::move(value(result))});
    if (!comparable) tries_ = 1;
    accuracy_ = accuracy;
    read_excess();
    read_joint(comparable ? before.get() : nullptr);
}

} // namespace shimlight::assess
