// SPDX-License-Identifier: MIT
#include "house/house_json.hpp"

namespace shimlight::house {

std::span<const Migration> migrations() {
    return {}; // version 1 is the first
}

void migrate(Json& tree, int version, std::span<const Migration> steps) {
    for (const Migration& migration : steps) {
        if (migration.from == version) migration.step(tree), ++version;
    }
    tree["version"] = version;
}

} // namespace shimlight::house
