// SPDX-License-Identifier: MIT
#include "assess/label_steps.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

bool matches(const LabelBuild& build, const Label& label) {
    const Rated& r = build.rated;
    return r.solved && (!label.u || std::fabs(r.u_w_m2k - u_si(label)) <= label_u_w_m2k) &&
           (!label.shgc || std::fabs(r.shgc - *label.shgc) <= label_shgc) &&
           (!label.light || std::fabs(r.light - *label.light) <= label_light);
}

double missed(const LabelBuild& build, const Label& label) {
    const Rated& r = build.rated;
    double sum = 0;
    if (label.u) sum += std::fabs(r.u_w_m2k - u_si(label)) / label_u_w_m2k;
    if (label.shgc) sum += std::fabs(r.shgc - *label.shgc) / label_shgc;
    if (label.light) sum += std::fabs(r.light - *label.light) / label_light;
    return sum;
}

/// People tell windows apart by frame, panes and coating: one of each is enough.
bool same_sort(const Candidate& a, const Candidate& b) {
    const GlassChoice &x = a.glass->glass, &y = b.glass->glass;
    return a.frame->frame == b.frame->frame && x.panes == y.panes &&
           (x.coating == opening::Coating::none) == (y.coating == opening::Coating::none) &&
           (x.coating == opening::Coating::none || x.kind == y.kind);
}

void count_alike(const std::vector<Candidate>& all, LabelAnswer& answer) {
    for (const Candidate& c : all) {
        if (c.missed > 0) continue;
        const double u = std::clamp(c.centre_u, c.glass->u.low, c.glass->u.high);
        const bool first = answer.alike++ == 0;
        answer.centre_u_low_w_m2k = first ? u : std::min(answer.centre_u_low_w_m2k, u);
        answer.centre_u_high_w_m2k = first ? u : std::max(answer.centre_u_high_w_m2k, u);
    }
}

bool like_one_of(const std::vector<const Candidate*>& some, const Candidate& c) {
    return std::any_of(some.begin(), some.end(),
                       [&](const Candidate* one) { return same_sort(*one, c); });
}

} // namespace

BuildSearch::BuildSearch(const SearchSpace& space, const Label& label, int most_builds)
    : label_(label), most_builds_(static_cast<std::size_t>(most_builds)) {
    answer_.reason = label_refusal(label, limits(space));
    if (!answer_.reason.empty()) return;
    all_ = candidates(space, label);
    count_alike(all_, answer_);
    next();
}

/// Takes the likeliest candidate of a new sort in hand; ends the search when there is none.
void BuildSearch::next() {
    const std::size_t most_tries = most_builds_ + 6;
    for (; at_ < all_.size() && answer_.builds.size() < most_builds_; ++at_) {
        const Candidate& c = all_[at_];
        if (like_one_of(taken_, c)) continue;
        // What its spans do not reach another of its sort does not reach either.
        if (c.missed > 0 && like_one_of(tried_, c)) continue;
        if (taken_.size() + near_.size() > most_tries) break;
        tried_.push_back(&c);
        tuning_.emplace(c, label_);
        ++at_;
        return;
    }
    finish();
}

bool BuildSearch::step() {
    if (!tuning_) return false;
    if (tuning_->step()) return true;
    LabelBuild build = std::move(tuning_->best);
    tuning_.reset();
    if (matches(build, label_)) {
        taken_.push_back(tried_.back());
        answer_.builds.push_back(std::move(build));
    } else {
        near_.push_back(std::move(build));
    }
    next();
    return tuning_.has_value();
}

/// The likeliest first; where none matches, the nearest ones.
void BuildSearch::sort_builds() {
    const auto likelier = [](const LabelBuild& a, const LabelBuild& b) {
        return a.unusual < b.unusual;
    };
    std::stable_sort(answer_.builds.begin(), answer_.builds.end(), likelier);
    if (!answer_.builds.empty() || near_.empty()) return;
    const auto nearer = [&](const LabelBuild& a, const LabelBuild& b) {
        return missed(a, label_) < missed(b, label_);
    };
    std::stable_sort(near_.begin(), near_.end(), nearer);
    near_.resize(std::min(near_.size(), most_builds_));
    answer_.builds = std::move(near_);
}

void BuildSearch::finish() {
    LabelAnswer& a = answer_;
    sort_builds();
    if (a.builds.empty()) {
        a.reason = "No generic build could be worked out.";
        return;
    }
    a.standing =
        matches(a.builds.front(), label_) ? LabelStanding::matched : LabelStanding::nearest;
    if (a.standing == LabelStanding::nearest) a.alike = 0;
    for (const LabelBuild& build : a.builds) {
        const double u = build.rated.u_centre_w_m2k;
        a.centre_u_low_w_m2k = a.alike > 0 ? std::min(a.centre_u_low_w_m2k, u) : u;
        a.centre_u_high_w_m2k = a.alike > 0 ? std::max(a.centre_u_high_w_m2k, u) : u;
    }
    // The lines of the search are coarser than what was worked out.
    if (a.standing == LabelStanding::matched) a.alike = std::max(a.alike, 1);
    if (label_.air)
        for (LabelBuild& build : a.builds)
            build.opening.sash.rated_l_s_m2 = air_l_s_m2(label_);
    a.reason = label_told(a, label_);
}

LabelAnswer read_label_in(const SearchSpace& space, const Label& label, int most_builds) {
    BuildSearch search(space, label, most_builds);
    while (search.step()) {
    }
    return search.answer();
}

LabelSearch::LabelSearch(const Label& label, int most_builds)
    : label_(label), most_builds_(most_builds), space_(label) {}

void LabelSearch::ask(const Label& label) {
    if (label.panes != label_.panes || label.frame != label_.frame) space_ = SpaceSearch(label);
    label_ = label;
    builds_.reset();
}

bool LabelSearch::step() {
    if (builds_) return builds_->step();
    if (!space_.step()) builds_.emplace(space_.space, label_, most_builds_);
    return !builds_ || builds_->busy();
}

const LabelAnswer* LabelSearch::answer() const {
    return builds_ && !builds_->busy() ? &builds_->answer() : nullptr;
}

/// Of the time both parts take, about a half each.
double LabelSearch::share_done() const {
    const double frames = static_cast<double>(space_.frames_done()) /
                          static_cast<double>(std::max<std::size_t>(space_.frames_all(), 1));
    return 0.5 * frames + (builds_ ? 0.5 * builds_->share_done() : 0);
}

LabelAnswer read_label(const Label& label, int most_builds) {
    LabelSearch search(label, most_builds);
    while (search.step()) {
    }
    return *search.answer();
}

} // namespace shimlight::assess
