// SPDX-License-Identifier: MIT
#include "house/mix.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::house {

/// Puts a set behind a list by price: only for more gain.
void MixSearch::append(std::vector<Node>& list, const Node& set) {
    if (list.empty() || set.gain > list.back().gain + same_mix) list.push_back(set);
}

bool MixSearch::before(const Node& a, const Node& b) {
    return a.price < b.price || (a.price == b.price && a.gain > b.gain);
}

/// Two lists by price into one without what is dominated; of equals the first list's.
std::vector<MixSearch::Node> MixSearch::merged(const std::vector<Node>& a,
                                               const std::vector<Node>& b) {
    std::vector<Node> all;
    all.reserve(a.size() + b.size());
    for (std::size_t i = 0, j = 0; i < a.size() || j < b.size();) {
        const bool second = i == a.size() || (j < b.size() && before(b[j], a[i]));
        append(all, second ? b[j++] : a[i++]);
    }
    return all;
}

/// What the openings not yet taken in could add at best if remedies could be split: gain over
/// price, concave.
struct MixSearch::Rest {
    std::vector<double> price{0}, gain{0};
    double budget = HUGE_VAL;
    double least = -HUGE_VAL; ///< gain that must stay in reach

    double at(double left, std::size_t& place) const {
        while (place > 0 && price[place] > left)
            --place;
        if (place + 1 == price.size()) return gain[place];
        const double share = (left - price[place]) / (price[place + 1] - price[place]);
        return gain[place] + share * (gain[place + 1] - gain[place]);
    }
};

MixSearch::MixSearch(const std::vector<MixOpening>& openings, double budget)
    : budget_(std::max(0.0, budget) + same_mix) {
    undominated(openings);
    nodes_.push_back({0, 0, 0, -1});
    ends_ = {0, 1};
    known_ = greedy(0, budget_, 0);
}

MixSearch MixSearch::every_set(const std::vector<MixOpening>& openings, std::size_t most) {
    MixSearch search;
    search.budget_ = HUGE_VAL;
    search.most_ = std::max<std::size_t>(most, 2);
    search.undominated(openings);
    search.nodes_.push_back({0, 0, 0, -1});
    search.ends_ = {0, 1};
    return search;
}

void MixSearch::undominated(const std::vector<MixOpening>& openings) {
    for (const MixOpening& opening : openings) {
        std::vector<Node> all{{0, 0, 0, -1}};
        for (std::size_t i = 0; i < opening.size(); ++i) {
            const MixChoice& c = opening[i];
            if (!(c.price >= 0 && c.price <= budget_ && std::isfinite(c.price + c.gain))) continue;
            const Node node{c.price, c.gain, 0, static_cast<std::int32_t>(i)};
            all.insert(std::upper_bound(all.begin(), all.end(), node, before), node);
        }
        std::vector<Node>& kept = options_.emplace_back();
        for (const Node& node : all)
            append(kept, node);
        add_hull(kept, options_.size() - 1);
    }
    free_.assign(options_.size() + 1, 0);
    for (std::size_t n = options_.size(); n-- > 0;)
        free_[n] = free_[n + 1] + options_[n].front().gain;
}

/// The corners of the hull of an opening's remedies: each next one gains less a unit of money.
void MixSearch::add_hull(const std::vector<Node>& kept, std::size_t opening) {
    std::vector<Node> hull;
    for (const Node& node : kept) {
        while (hull.size() > 1) {
            const Node &b = hull.back(), &a = hull[hull.size() - 2];
            if ((b.gain - a.gain) * (node.price - b.price) >
                (node.gain - b.gain) * (b.price - a.price))
                break;
            hull.pop_back();
        }
        hull.push_back(node);
    }
    for (std::size_t i = 1; i < hull.size(); ++i) {
        const Increment more{hull[i].price - hull[i - 1].price, hull[i].gain - hull[i - 1].gain,
                             opening};
        increments_.insert(std::upper_bound(increments_.begin(), increments_.end(), more,
                                            [](const Increment& a, const Increment& b) {
                                                return a.gain * b.price > b.gain * a.price;
                                            }),
                           more);
    }
}

/// Gain with the rest filled by gain per money as long as it fits: a set that can be had.
double MixSearch::greedy(double gain, double left, std::size_t from) const {
    std::vector<bool> closed(options_.size(), false);
    gain += free_[from];
    for (const Increment& more : increments_) {
        if (more.opening < from || closed[more.opening]) continue;
        if (more.price > left) {
            closed[more.opening] = true;
            continue;
        }
        left -= more.price;
        gain += more.gain;
    }
    return gain;
}

/// The list before with one option of the next opening; what can no longer reach the best known
/// set is left out.
void MixSearch::shifted(const Node& option, const Rest& rest, std::vector<Node>& out) const {
    std::size_t place = rest.price.size() - 1;
    out.clear();
    for (std::size_t i = ends_[ends_.size() - 2]; i < ends_.back(); ++i) {
        const Node next{nodes_[i].price + option.price, nodes_[i].gain + option.gain,
                        static_cast<std::uint32_t>(i), option.choice};
        if (next.price > rest.budget) return;
        if (most_ == 0 && next.gain + rest.at(rest.budget - next.price, place) < rest.least)
            continue;
        out.push_back(next);
    }
}

bool MixSearch::step() {
    const std::size_t n = ends_.size() - 2;
    if (n >= options_.size()) return false;
    Rest rest;
    rest.gain[0] = free_[n + 1];
    rest.budget = budget_;
    rest.least = known_ - same_mix * (1 + std::fabs(known_));
    for (const Increment& more : increments_)
        if (most_ == 0 && more.opening > n) {
            rest.price.push_back(rest.price.back() + more.price);
            rest.gain.push_back(rest.gain.back() + more.gain);
        }
    std::vector<Node> all, next;
    for (const Node& option : options_[n]) {
        shifted(option, rest, next);
        all = merged(all, next);
    }
    if (most_ > 0 && all.size() > most_) thin(all);
    longest_ = std::max(longest_, all.size());
    if (most_ == 0 && !all.empty()) { // the most promising one, filled up
        std::size_t place = rest.price.size() - 1;
        double most = -HUGE_VAL;
        const Node* promising = &all.front();
        for (const Node& node : all) {
            const double reach = node.gain + rest.at(budget_ - node.price, place);
            if (reach > most) most = reach, promising = &node;
        }
        known_ = std::max(known_, greedy(promising->gain, budget_ - promising->price, n + 1));
    }
    nodes_.insert(nodes_.end(), all.begin(), all.end());
    ends_.push_back(nodes_.size());
    return n + 1 < options_.size();
}

/// Evenly by price the best of each stretch; the last is the best of all.
void MixSearch::thin(std::vector<Node>& list) {
    const double width = list.back().price / static_cast<double>(most_ - 1);
    std::vector<Node> kept{list.front()};
    for (std::size_t i = 1; i < list.size(); ++i) {
        const bool ends = i + 1 == list.size() || std::floor(list[i].price / width) !=
                                                      std::floor(list[i + 1].price / width);
        if (ends) kept.push_back(list[i]);
    }
    list = std::move(kept);
    thinned_ = true;
}

MixSet MixSearch::best() const {
    MixSet set;
    set.chosen.assign(options_.size(), -1);
    std::size_t at = ends_.back() - 1;
    set.price = nodes_[at].price;
    set.gain = nodes_[at].gain;
    for (std::size_t n = options_.size(); n-- > 0; at = nodes_[at].before)
        set.chosen[n] = nodes_[at].choice;
    return set;
}

std::vector<MixChoice> MixSearch::sets() const {
    std::vector<MixChoice> all;
    for (std::size_t i = ends_[ends_.size() - 2]; i < ends_.back(); ++i)
        all.push_back({nodes_[i].price, nodes_[i].gain});
    return all;
}

MixSet best_mix(const std::vector<MixOpening>& openings, double budget) {
    MixSearch search(openings, budget);
    while (search.step()) {
    }
    return search.best();
}

std::optional<MixSet> next_mix(const std::vector<MixOpening>& openings,
                               const std::vector<MixChoice>& sets, const MixSet& now, double more) {
    for (const MixChoice& set : sets)
        if (set.gain >= now.gain + more) return best_mix(openings, set.price);
    return {};
}

} // namespace shimlight::house
