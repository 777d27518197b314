// SPDX-License-Identifier: MIT
#include "opening/storey.hpp"

namespace shimlight::opening {

namespace {

/// Storeys between the ground floor and the room.
int storeys_below(const Room& room) {
    switch (room.storey) {
    case Storey::basement:
        return -1;
    case Storey::upstairs:
        return 1;
    case Storey::attic:
        return room.storeys - 1;
    case Storey::ground:
    case Storey::by_height:
        break;
    }
    return 0;
}

} // namespace

double height_above_neutral_m(const Case& c) {
    if (c.room.storey == Storey::by_height) return c.room.height_above_neutral_m;
    const double heated_top_m = c.room.storeys * storey_height_m;
    const double heated_foot_m = c.room.basement ? -storey_height_m : 0;
    const double floor_m = storeys_below(c.room) * storey_height_m;
    const double middle_m = floor_m + c.opening.sill_m + c.opening.height_m / 2;
    return middle_m - (heated_foot_m + heated_top_m) / 2;
}

int least_storeys(Storey storey) {
    return storey == Storey::upstairs || storey == Storey::attic ? 2 : 1;
}

} // namespace shimlight::opening
