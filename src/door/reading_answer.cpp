// SPDX-License-Identifier: MIT
#include "door/reading_answer.hpp"

#include <array>

namespace shimlight::door {

namespace {
constexpr std::array<std::string_view, 3> compared_keys{"colder", "as_computed", "warmer"};
constexpr std::array<std::string_view, 7> part_keys{"glass_centre", "glass_edge", "frame", "casing",
                                                    "wall",         "hidden",     "storm"};
} // namespace

std::string part_key(opening::Part part) {
    return std::string(part_keys[static_cast<std::size_t>(part)]);
}

std::string compared_key(assess::Compared compared) {
    return std::string(compared_keys[static_cast<std::size_t>(compared)]);
}

Json reading_answer(const assess::SurfaceReading& reading) {
    Json explanations = Json::array();
    for (const assess::Explanation& e : reading.explanations)
        explanations.push_back(object({{"assumption", std::string(e.assumption)},
                                       {"explains", e.explains},
                                       {"assumed", e.assumed},
                                       {"needed", e.needed},
                                       {"left_k", e.left_k},
                                       {"sentence", e.sentence}}));
    return object({{"computed_c", reading.computed_c},
                   {"difference_k", reading.difference_k},
                   {"range_k", reading.range_k},
                   {"compared", compared_key(reading.compared)},
                   {"sentence", reading.sentence},
                   {"explanations", std::move(explanations)}});
}

Json share_answer(const physics::DraftShare& share) {
    return object({{"cold_glass", share.cold_glass},
                   {"sash_leak", share.sash_leak},
                   {"shim_leak", share.shim_leak}});
}

Json found_answer(const assess::FindOut& found) {
    Json contradictions = Json::array();
    for (const assess::Contradiction& one : found.contradictions) {
        Json keys = Json::array({std::string(assess::test_rows()[one.first.test].key)});
        if (one.second.test != one.first.test)
            keys.push_back(std::string(assess::test_rows()[one.second.test].key));
        contradictions.push_back(object({{"tests", std::move(keys)}, {"sentence", one.sentence}}));
    }
    return object({{"share", share_answer(found.share)},
                   {"low", share_answer(found.low)},
                   {"high", share_answer(found.high)},
                   {"contradictions", std::move(contradictions)},
                   {"against_prediction", found.against_prediction}});
}

} // namespace shimlight::door
