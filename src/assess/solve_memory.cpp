// SPDX-License-Identifier: MIT
#include "assess/solve_memory.hpp"
#include "assess/surfaces.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

// Airs nearer than this give no heat flow to measure a conductance by, K.
constexpr double measurable_k = 0.5;

double inside_heat_w_m(const SolvedCut& solved) {
    double heat_w_m = 0;
    for (std::size_t air = 0; air < solved.field.heat_w_m.size(); ++air)
        if (solved.cut.air_is_inside[air]) heat_w_m += solved.field.heat_w_m[air];
    return heat_w_m;
}

/// The cut with its heat flows alone: a megabyte less.
std::shared_ptr<const SolvedCut> without_temperatures(const SolvedCut& solved) {
    SolvedCut slim{solved.cut, {}, solved.coldest_c, solved.warmest_c};
    slim.field.heat_w_m = solved.field.heat_w_m;
    slim.field.streams = solved.field.streams;
    return std::make_shared<const SolvedCut>(std::move(slim));
}

double air_c(const opening::Cut& cut, int air) {
    return cut.painting.airs[static_cast<std::size_t>(air)].temperature_c;
}

double difference_k(const opening::Cut& cut) {
    return air_c(cut, cut.inside_air) - air_c(cut, cut.outside_air);
}

bool mirrored(const section::Region& a, const section::Region& b, double height_m) {
    constexpr double rounding_m = 1e-9;
    const auto same = [](double x, double y) { return std::fabs(x - y) < rounding_m; };
    return a.fill == b.fill && same(a.rect.x0_m, b.rect.x0_m) && same(a.rect.x1_m, b.rect.x1_m) &&
           same(a.rect.y0_m, height_m - b.rect.y1_m) && same(a.rect.y1_m, height_m - b.rect.y0_m);
}

/// Whether one painting is the other upside down.
bool mirrored(const section::Painting& a, const section::Painting& b) {
    if (a.width_m != b.width_m || a.height_m != b.height_m || a.regions.size() != b.regions.size())
        return false;
    if (!(a.airs == b.airs) || !a.edges.empty() || !b.edges.empty()) return false;
    if (!a.streams.empty() || !b.streams.empty()) return false;
    for (std::size_t r = 0; r < a.regions.size(); ++r)
        if (!mirrored(a.regions[r], b.regions[r], a.height_m)) return false;
    return true;
}

} // namespace

void Slot::want(const opening::Case& c, const physics::GlazingResult& glass) {
    opening::Cut next = opening::cut(c, position_, glass, surroundings_);
    if (!(next.painting == wanted_.painting)) {
        failed_ = false;
        begun_.reset();
    }
    wanted_ = std::move(next);
    glass_u_w_m2k_ = glass.u_w_m2k;
    const bool in_wall = surroundings_ == opening::Surroundings::wall &&
                         position_ != opening::Position::meeting_rail;
    undisturbed_w_mk_ = in_wall ? opening::undisturbed_wall_w_mk(c, position_) : 0;
}

bool Slot::fresh(section::Accuracy least, Pace pace) const {
    if (failed_) return true;
    if (followed_ && pace == Pace::resting) return false;
    if (followed_ && !kept_.settled()) return false;
    return solved_ && accuracy_ >= least && solved_->cut.painting == wanted_.painting;
}

double Slot::stream_heat_w_m() const {
    double taken_w_m = 0;
    if (!solved_) return 0;
    for (const section::StreamCourse& course : solved_->field.streams)
        taken_w_m -= course.heat_w_m;
    return taken_w_m;
}

std::optional<double> Slot::outlet_c(std::string_view stream) const {
    if (!solved_) return {};
    const std::vector<section::Stream>& streams = solved_->cut.painting.streams;
    for (std::size_t s = 0; s < streams.size(); ++s)
        if (streams[s].name == stream) return solved_->field.streams[s].outlet_c;
    return {};
}

void Slot::read_excess() {
    const double glass_m = wanted_.glass_m;
    sight_m_ = wanted_.painting.height_m - glass_m;
    const double between_k = difference_k(wanted_);
    if (std::fabs(between_k) < measurable_k) return;
    excess_w_mk_ =
        inside_heat_w_m(*solved_) / between_k - glass_u_w_m2k_ * glass_m - undisturbed_w_mk_;
    frame_w_mk_ = heat_of_part_w_m(*solved_, opening::Part::frame) / between_k;
    edge_w_mk_ = heat_of_part_w_m(*solved_, opening::Part::glass_edge) / between_k;
}

bool Slot::take_mirrored(const Slot& other) {
    if (!other.solved_ || !mirrored(other.solved_->cut.painting, wanted_.painting)) return false;
    solved_ = other.solved_;
    accuracy_ = other.accuracy_;
    failed_ = other.failed_;
    sight_m_ = other.sight_m_;
    excess_w_mk_ = other.excess_w_mk_;
    frame_w_mk_ = other.frame_w_mk_;
    edge_w_mk_ = other.edge_w_mk_;
    return true;
}

void Slot::solve(section::Accuracy accuracy, Pace pace) {
    const section::Painting& painting = wanted_.painting;
    const section::Field* warm = solved_ && is_shown() ? &solved_->field : nullptr;
    Result<section::Field> result = pace == Pace::moving ? kept_.glimpse(painting, warm)
                                    : pace == Pace::around
                                        ? kept_.around(painting, warm)
                                        : section::solve(painting, accuracy, warm);
    begun_.reset();
    followed_ = pace != Pace::resting; // not for what stays
    finish(std::move(result), accuracy);
}

void Slot::step(section::Accuracy accuracy) {
    if (!begun_ || begun_at_ != accuracy) {
        const section::Field* warm = solved_ && is_shown() ? &solved_->field : nullptr;
        begun_.emplace(wanted_.painting, accuracy, warm);
        begun_at_ = accuracy;
        return;
    }
    if (begun_->step()) return;
    followed_ = false;
    finish(begun_->take(), accuracy);
    begun_.reset();
}

void Slot::finish(Result<section::Field> result, section::Accuracy accuracy) {
    failed_ = !ok(result);
    if (failed_) return;
    SolvedCut solved{wanted_, std::move(value(result))};
    for (const double c : solved.field.node_c) { // NaN where nothing is solid: neither is smaller
        solved.coldest_c = std::min(solved.coldest_c, c);
        solved.warmest_c = std::max(solved.warmest_c, c);
    }
    solved_ = std::make_shared<const SolvedCut>(std::move(solved));
    accuracy_ = accuracy;
    read_excess();
    if (!is_shown()) solved_ = without_temperatures(*solved_);
}

} // namespace shimlight::assess
