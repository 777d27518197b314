// SPDX-License-Identifier: MIT
// What the tests of the screens share: sizes, the answers behind a stage, boxes that must not meet.
#pragma once

#include "stage/stage.hpp"

#include <doctest/doctest.h>

#include <string_view>
#include <vector>

namespace shimlight::screens {

inline constexpr stage::Size phone{360, 640}, tablet{768, 1024}, wide{1440, 900}, lying{844, 390},
    lying_small{640, 360}, narrow_wide{1024, 768};
inline constexpr stage::Size sizes[] = {phone, tablet, wide, lying, lying_small, narrow_wide};

inline constexpr const char* views[] = {"view.slice", "view.room",     "view.panes",
                                        "view.air",   "view.readings", "view.bill",
                                        "view.sheet", "view.lesson",   "view.house"};

inline opening::Case today() {
    const house::House h = house::demo_house();
    return house::today_case(h, h.openings[static_cast<std::size_t>(h.selected)]);
}
inline const opening::Case remedy() {
    const house::House h = house::demo_house();
    return house::remedy_case(h, h.openings[static_cast<std::size_t>(h.selected)]);
}
/// Solved once for all tests.
inline const assess::Assessment& today_answer() {
    static const assess::Assessment answer = assess::assess(today());
    return answer;
}

inline std::string value_of(const stage::Stage& stage, const std::string& id) {
    const view::MirrorNode* node = stage.node(id);
    REQUIRE_MESSAGE(node, id);
    return node->value;
}

inline bool overlap(const view::MirrorRect& a, const view::MirrorRect& b) {
    return a.x < b.x + b.w - 1 && b.x < a.x + a.w - 1 && a.y < b.y + b.h - 1 && b.y < a.y + a.h - 1;
}

/// Outputs and headings of the picture whose ids begin with `start` lie on the screen and apart.
inline void check_apart(const stage::Stage& stage, stage::Size size, std::string_view start,
                        std::size_t least = 3) {
    std::vector<const view::MirrorNode*> words;
    for (const view::MirrorNode& n : stage.mirror().nodes()) {
        if (n.id.compare(0, start.size(), start) != 0 || !n.reachable) continue;
        CHECK_MESSAGE((n.rect.x >= 0 && n.rect.x + n.rect.w <= size.width_px), n.id);
        CHECK_MESSAGE((n.rect.y >= 0 && n.rect.y + n.rect.h <= size.height_px), n.id);
        const bool word = n.role == view::Role::output || n.role == view::Role::figure;
        if (word || n.role == view::Role::heading) words.push_back(&n);
    }
    CHECK(words.size() >= least);
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t j = i + 1; j < words.size(); ++j)
            CHECK_MESSAGE(!overlap(words[i]->rect, words[j]->rect), words[i]->id, " ", words[j]->id,
                          " at ", size.width_px);
}

} // namespace shimlight::screens
