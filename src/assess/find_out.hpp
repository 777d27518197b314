// SPDX-License-Identifier: MIT
// Which cause the draft has, from the computed prediction and from tests on site: shares, not a
// ruling.
//
// The model. The draft is 24 equal parts; each comes from one cause. Before any test their chances
// follow from the computed shares, held as if they had been seen in `prediction_weight` parts of
// such drafts (a Dirichlet prior, in whole parts: Pólya's urn). So without answers the mean is the
// prediction. A test feels one part, or two where it has three answers: "yes" with the chance that
// the row states for the part's cause; two yeses are "gone", one "weaker", none "the same". Answers
// are independent once the split is known, so their likelihoods multiply and order cannot matter.
#pragma once

#include "assess/find_out_rows.hpp"
#include "physics/seat.hpp"

#include <span>
#include <string>
#include <vector>

namespace shimlight::assess {

/// Index of the row, and of the answer in it.
struct TestAnswer {
    std::size_t test = 0, answer = 0;
};

/// Two answers that no split of the draft makes likely together; or one that all others together
/// leave unlikely: then `second` is the same as `first`.
struct Contradiction {
    TestAnswer first, second; ///< in the order of the table
    std::string sentence;
};

struct FindOut {
    physics::DraftShare share;     ///< means; they sum to 1
    physics::DraftShare low, high; ///< 10 and 90 %; wider where answers contradict each other
    std::vector<Contradiction> contradictions;
    std::string against_prediction; ///< a sentence where the tests leave the computation far behind
    const TestRow* next = nullptr; ///< test that tells most a minute; null when none tells anything
    double next_gain = 0;          ///< nats it tells on average
};

/// `predicted` need not sum to 1; all zero counts as thirds. A test answered twice counts once, the
/// later answer. With `instrument` readings may be the next test.
FindOut find_out(const physics::DraftShare& predicted, std::span<const TestAnswer> answers,
                 bool instrument = false);

/// nullptr when there is none of that key.
const TestRow* find_test(std::string_view key);

} // namespace shimlight::assess
