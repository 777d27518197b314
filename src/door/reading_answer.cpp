// SPDX-License-Identifier: MIT
#include "door/reading_answer.hpp"

#include <array>

namespace shimlight::door {

namespace {
constexpr std::array<std::string_view, 3> compared_keys{"colder", "as_computed", "warmer"};
} // namespace

Json reading_answer(const assess::SurfaceReading& reading) {
    Json explanations = Json::array();
    for (const assess::Explanation& e : reading.explanations)
        explanations.push_back(object({{"assumption", std::string(e.assumption)},
                                       {"explains", e.explains},
                                       {"assumed", e.assumed},
                                       {"needed", e.needed},
                                       {"left_k", e.left_k},
                                       {"sentence", e.sentence}}));
    const auto compared = static_cast<std::size_t>(reading.compared);
    return object({{"computed_c", reading.computed_c},
                   {"difference_k", reading.difference_k},
                   {"range_k", reading.range_k},
                   {"compared", std::string(compared_keys[compared])},
                   {"sentence", reading.sentence},
                   {"explanations", std::move(explanations)}});
}

} // namespace shimlight::door
