// SPDX-License-Identifier: MIT
// Which remedies of a house give the most for so much money: at most one an opening. Exact for
// prices as they are, without a grid. The undominated sets are carried from opening to opening
// (Nemhauser and Ullmann 1969); a set that even with split remedies could no longer reach the best
// known one is dropped (bound of the multiple-choice knapsack, Sinha and Zoltners 1979). Both from
// memory.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace shimlight::house {

/// A remedy of one opening, beside none at price 0 and gain 0. Those with a negative price, or with
/// a number that is none, are passed over.
struct MixChoice {
    double price = 0, gain = 0;
};
using MixOpening = std::vector<MixChoice>;

struct MixSet {
    std::vector<int> chosen;    ///< by opening, the index of its choice; -1 for none
    double price = 0, gain = 0; ///< summed in the openings' order
};

/// Gains nearer than this count as equal, and a budget is held within as much.
inline constexpr double same_mix = 1e-9;

/// One opening a step, so that a screen can draw in between.
class MixSearch {
  public:
    /// The best set within the budget.
    MixSearch(const std::vector<MixOpening>& openings, double budget);
    /// Every undominated set: the highest gain at each price that raises it. Lists longer than
    /// `most` are thinned; what is left can be had, but better may lie between.
    static MixSearch every_set(const std::vector<MixOpening>& openings, std::size_t most);

    /// Takes in one opening; false when none is left.
    bool step();
    /// After the last step: the highest gain, of equals the cheapest.
    MixSet best() const;
    /// After the last step: both ascending, from price 0.
    std::vector<MixChoice> sets() const;
    bool thinned() const { return thinned_; }
    std::size_t longest() const { return longest_; } ///< list so far

  private:
    /// A set, or one opening's remedy.
    struct Node {
        double price, gain;
        std::uint32_t before; ///< in `nodes_`
        std::int32_t choice;
    };
    /// One more step along an opening's best remedies by gain per money.
    struct Increment {
        double price, gain;
        std::size_t opening;
    };
    std::vector<std::vector<Node>> options_; ///< undominated, none among them
    std::vector<Increment> increments_;      ///< by gain per money
    std::vector<double> free_; ///< gain without money of all openings from this one on
    std::vector<Node> nodes_;
    std::vector<std::size_t> ends_; ///< of each opening's list in `nodes_`, the first the empty set
    double budget_ = 0, known_ = 0; ///< gain of a set that is known
    std::size_t most_ = 0;          ///< 0: bounded by the budget instead
    std::size_t longest_ = 1;
    bool thinned_ = false;

    struct Rest;
    MixSearch() = default;
    static void append(std::vector<Node>& list, const Node& set);
    static bool before(const Node& a, const Node& b);
    static std::vector<Node> merged(const std::vector<Node>& a, const std::vector<Node>& b);
    void undominated(const std::vector<MixOpening>& openings);
    void add_hull(const std::vector<Node>& kept, std::size_t opening);
    double greedy(double gain, double left, std::size_t from) const;
    void shifted(const Node& option, const Rest& rest, std::vector<Node>& out) const;
    void thin(std::vector<Node>& list);
};

MixSet best_mix(const std::vector<MixOpening>& openings, double budget);

/// The cheapest set that gains at least `more` over `now`, where the undominated `sets` know one.
std::optional<MixSet> next_mix(const std::vector<MixOpening>& openings,
                               const std::vector<MixChoice>& sets, const MixSet& now, double more);

} // namespace shimlight::house
