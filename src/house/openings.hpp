// SPDX-License-Identifier: MIT
// Walking through a house: openings copied, deleted, put in order and into rooms. The openings of a
// room stand together. All of them leave `selected` on what was done.
#pragma once

#include "house/house.hpp"

namespace shimlight::house {

/// A free name made from `name`: "Window" → "Window 2", "Window 2" → the next number that no
/// opening of the house has.
std::string next_name(const House& house, const std::string& name);

/// The names of the rooms, each once, in their order.
std::vector<std::string> rooms_of(const House& house);

/// The same window once more, after `index`: window, room, remedies, and what belongs to house and
/// maker. What belongs to the one place (complaint, notes, what was seen, read and taped,
/// photographs) is left out. False when the house is full.
bool copy_opening(House& house, std::size_t index);

/// Like the last one, in a room of its own whose name is to be given.
bool new_room(House& house);

/// The last opening of a house cannot go.
bool delete_opening(House& house, std::size_t index);

/// Into that room, after those that are there.
void set_room(House& house, std::size_t index, const std::string& room_name);

enum class Step { none, opening, room };

/// What one step up (−1) or down (+1) moves: the opening within its room, or at its end the room.
Step step_of(const House& house, std::size_t index, int way);
void move_opening(House& house, std::size_t index, int way);

/// True when it was added: no more than there is room for, and none twice.
bool add_photo(OpeningRecord& record, std::string_view id);

} // namespace shimlight::house
