// SPDX-License-Identifier: MIT
#include "assess/find_out.hpp"

#include "assess/phrases.hpp"
#include "assess/words.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

using physics::DraftShare;

// Parts of the draft: steps of 4 % are finer than anybody can tell on site.
constexpr int parts = 24;
constexpr std::size_t split_count = (parts + 1) * (parts + 2) / 2;
// How much the computation is trusted, in parts seen: one plain test can turn it. An estimate.
constexpr double prediction_weight = 3;
// No cause is quite excluded by a computation: its inputs come from a glance at the window.
constexpr double never_excluded = 0.02;
// Two answers contradict each other when the best split makes them together less than this likely,
// each measured by its own best split. Two plain yes-or-no answers always keep more than 0.25. At
// 0.11 five honest surveys of a hundred are suspected (see the tests).
constexpr double together = 0.11;
// One answer stands alone when the others, without the computation, make it less than this part as
// likely as it is to somebody who knows nothing.
constexpr double alone = 0.4;
// Tests have left the computation behind when they move this share of the draft elsewhere.
constexpr double far_moved = 0.4;
constexpr double low_quantile = 0.1, high_quantile = 0.9;
// Less than this many nats is not worth a walk to the window.
constexpr double worth_asking = 0.01;
constexpr std::size_t no_answer = 3;

using Split = std::array<int, cause_count>; ///< parts of each cause
using Belief = std::array<double, split_count>;
using Answers = std::vector<std::size_t>; ///< by row; no_answer where not asked

template <class Do> void for_each_split(Do&& go) {
    std::size_t i = 0;
    for (int glass = 0; glass <= parts; ++glass)
        for (int sash = 0; sash + glass <= parts; ++sash)
            go(Split{glass, sash, parts - glass - sash}, i++);
}

std::array<double, cause_count> as_array(const DraftShare& share) {
    return {share.cold_glass, share.sash_leak, share.shim_leak};
}

/// Chances of n = 0 … parts parts of one cause, but for what they have in common.
std::array<double, parts + 1> urn(double weight) {
    std::array<double, parts + 1> chance{};
    chance[0] = 1;
    for (int n = 1; n <= parts; ++n)
        chance[static_cast<std::size_t>(n)] =
            chance[static_cast<std::size_t>(n) - 1] * (weight + n - 1) / n;
    return chance;
}

void normalise(Belief& belief) {
    double sum = 0;
    for (const double chance : belief)
        sum += chance;
    for (double& chance : belief)
        chance /= sum;
}

Belief prior(const DraftShare& predicted) {
    auto share = as_array(predicted);
    const double sum = share[0] + share[1] + share[2];
    std::array<std::array<double, parts + 1>, cause_count> chance;
    for (std::size_t k = 0; k < cause_count; ++k) {
        const double known = sum > 0 ? share[k] / sum : 1.0 / cause_count;
        const double held = never_excluded + (1 - cause_count * never_excluded) * known;
        chance[k] = urn(prediction_weight * held);
    }
    Belief belief;
    for_each_split([&](const Split& split, std::size_t i) {
        belief[i] = 1;
        for (std::size_t k = 0; k < cause_count; ++k)
            belief[i] *= chance[k][static_cast<std::size_t>(split[k])];
    });
    normalise(belief);
    return belief;
}

std::size_t answer_count(const TestRow& row) {
    return row.scale == Scale::two ? 2 : 3;
}

/// Chance of an answer when the draft is split so. Over a row's answers it sums to 1.
double likelihood(const TestRow& row, std::size_t answer, const Split& split) {
    double yes = 0;
    for (std::size_t k = 0; k < cause_count; ++k)
        yes += row.yes[k] * split[k] / parts;
    if (row.scale == Scale::two) return answer == 0 ? yes : 1 - yes;
    return answer == 0 ? yes * yes : answer == 1 ? 2 * yes * (1 - yes) : (1 - yes) * (1 - yes);
}

void take(Belief& belief, std::size_t test, std::size_t answer) {
    for_each_split([&](const Split& split, std::size_t i) {
        belief[i] *= likelihood(test_rows()[test], answer, split);
    });
    normalise(belief);
}

/// In the order of the table, whatever order they came in: the same to the last digit.
Belief after(Belief belief, const Answers& answers) {
    for (std::size_t test = 0; test < answers.size(); ++test)
        if (answers[test] != no_answer) take(belief, test, answers[test]);
    return belief;
}

DraftShare mean(const Belief& belief) {
    std::array<double, cause_count> sum{};
    for_each_split([&](const Split& split, std::size_t i) {
        for (std::size_t k = 0; k < cause_count; ++k)
            sum[k] += belief[i] * split[k] / parts;
    });
    return {sum[0], sum[1], sum[2]};
}

/// Smallest share that the cause keeps below with this chance.
DraftShare quantile(const Belief& belief, double chance) {
    std::array<double, cause_count> found{};
    for (std::size_t k = 0; k < cause_count; ++k) {
        std::array<double, parts + 1> of{};
        for_each_split([&](const Split& split, std::size_t i) {
            of[static_cast<std::size_t>(split[k])] += belief[i];
        });
        double sum = 0;
        std::size_t n = 0;
        while (n < parts && (sum += of[n]) < chance)
            ++n;
        found[k] = static_cast<double>(n) / parts;
    }
    return {found[0], found[1], found[2]};
}

void widen(FindOut& result, const Belief& belief) {
    const auto spread = [](DraftShare& to, const DraftShare& from, auto choose) {
        to = {choose(to.cold_glass, from.cold_glass), choose(to.sash_leak, from.sash_leak),
              choose(to.shim_leak, from.shim_leak)};
    };
    spread(result.low, quantile(belief, low_quantile),
           [](double a, double b) { return std::min(a, b); });
    spread(result.high, quantile(belief, high_quantile),
           [](double a, double b) { return std::max(a, b); });
}

std::string_view said(const TestAnswer& a) {
    return test_rows()[a.test].said[a.answer];
}

double best_likelihood(const TestAnswer& a) {
    double best = 0;
    for_each_split([&](const Split& split, std::size_t) {
        best = std::max(best, likelihood(test_rows()[a.test], a.answer, split));
    });
    return best;
}

bool contradict(const TestAnswer& a, const TestAnswer& b) {
    double best = 0;
    for_each_split([&](const Split& split, std::size_t) {
        best = std::max(best, likelihood(test_rows()[a.test], a.answer, split) *
                                  likelihood(test_rows()[b.test], b.answer, split));
    });
    return best < together * best_likelihood(a) * best_likelihood(b);
}

double chance_of(const TestAnswer& a, const Belief& belief) {
    double chance = 0;
    for_each_split([&](const Split& split, std::size_t i) {
        chance += belief[i] * likelihood(test_rows()[a.test], a.answer, split);
    });
    return chance;
}

/// Answers that no other one excludes, but all others together.
void find_lone_answers(FindOut& result, const Belief& before, const Answers& answers) {
    const Belief ignorance = prior({});
    for (std::size_t test = 0; test < answers.size(); ++test) {
        const TestAnswer a{test, answers[test]};
        if (a.answer == no_answer) continue;
        Answers rest = answers;
        rest[test] = no_answer;
        if (chance_of(a, after(ignorance, rest)) >= alone * chance_of(a, ignorance)) continue;
        result.contradictions.push_back(
            {a, a, fill(phrases::stands_alone, {capitalised(std::string(said(a)))})});
        widen(result, after(before, rest));
    }
}

void find_contradictions(FindOut& result, const Belief& before, const Answers& answers) {
    for (std::size_t a = 0; a < answers.size(); ++a) {
        for (std::size_t b = a + 1; b < answers.size(); ++b) {
            const TestAnswer first{a, answers[a]}, second{b, answers[b]};
            if (first.answer == no_answer || second.answer == no_answer) continue;
            if (!contradict(first, second)) continue;
            result.contradictions.push_back(
                {first, second,
                 fill(phrases::contradiction,
                      {capitalised(std::string(said(first))), said(second)})});
            // Either may be the wrong one: the truth may lie where each alone would put it.
            for (const std::size_t dropped : {a, b}) {
                Answers rest = answers;
                rest[dropped] = no_answer;
                widen(result, after(before, rest));
            }
        }
    }
}

void compare_with_prediction(FindOut& result, const DraftShare& before) {
    const auto was = as_array(before), is = as_array(result.share);
    double moved = 0;
    for (std::size_t k = 0; k < cause_count; ++k)
        moved += std::fabs(is[k] - was[k]) / 2;
    if (moved > far_moved)
        result.against_prediction = fill(phrases::against_prediction, {share_in_words(moved)});
}

/// What the answer to a row would tell on average about the split, nats.
double gain(const Belief& belief, const TestRow& row) {
    double told = 0;
    for (std::size_t answer = 0; answer < answer_count(row); ++answer) {
        double chance = 0, own = 0;
        for_each_split([&](const Split& split, std::size_t i) {
            const double l = likelihood(row, answer, split);
            chance += belief[i] * l;
            own += belief[i] * l * std::log(l);
        });
        told += own - chance * std::log(chance);
    }
    return told;
}

void choose_next(FindOut& result, const Belief& belief, const Answers& answers, bool instrument) {
    double best = 0;
    for (std::size_t test = 0; test < answers.size(); ++test) {
        const TestRow& row = test_rows()[test];
        if (answers[test] != no_answer || (row.instrument && !instrument)) continue;
        const double told = gain(belief, row), a_minute = told / row.minutes;
        const bool free_fix = test == 0; // offered first whatever it tells: it may end the matter
        if (!free_fix && (told < worth_asking || a_minute <= best)) continue;
        result.next = &row;
        result.next_gain = told;
        best = a_minute;
        if (free_fix) return;
    }
}

} // namespace

FindOut find_out(const DraftShare& predicted, std::span<const TestAnswer> answers,
                 bool instrument) {
    Answers by_row(test_rows().size(), no_answer);
    for (const TestAnswer& a : answers)
        by_row[a.test] = a.answer;
    const Belief before = prior(predicted);
    const Belief belief = after(before, by_row);
    FindOut result;
    result.share = mean(belief);
    result.low = quantile(belief, low_quantile);
    result.high = quantile(belief, high_quantile);
    find_contradictions(result, before, by_row);
    if (result.contradictions.empty()) find_lone_answers(result, before, by_row);
    compare_with_prediction(result, mean(before));
    choose_next(result, belief, by_row, instrument);
    return result;
}

const TestRow* find_test(std::string_view key) {
    for (const TestRow& row : test_rows())
        if (row.key == key) return &row;
    return nullptr;
}

} // namespace shimlight::assess
