// SPDX-License-Identifier: MIT
// One constant table from several, at compile time.
#pragma once

#include <array>
#include <cstddef>

namespace shimlight::opening {

template <class Row, std::size_t... sizes>
constexpr std::array<Row, (sizes + ...)> join(const std::array<Row, sizes>&... parts) {
    std::array<Row, (sizes + ...)> all = {};
    std::size_t next = 0;
    const auto add = [&](const auto& part) {
        for (const Row& row : part)
            all[next++] = row;
    };
    (add(parts), ...);
    return all;
}

} // namespace shimlight::opening
