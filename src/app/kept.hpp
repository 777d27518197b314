// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

namespace shimlight::app {

/// What is kept of this identity, or else what was not used for longest, to be made anew.
template <class Kept, std::size_t count>
Kept& kept_or_oldest(std::array<Kept, count>& all, std::uint64_t identity) {
    Kept* found = all.data();
    for (Kept& one : all) {
        if (one.identity == identity) return one;
        if (one.used_in_frame < found->used_in_frame) found = &one;
    }
    return *found;
}

} // namespace shimlight::app
