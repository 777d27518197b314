// SPDX-License-Identifier: MIT
// The questions of the door. Each reads its fields, checks them, asks a room and writes the answer.
// Fields, ranges and defaults stand at the top of each ask_<question>.cpp.
#pragma once

#include "house/json_reader.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace shimlight::physics {
struct SeatResult;
}

namespace shimlight::door {

using house::ArrayReader;
using house::Json;
using house::ObjectReader;
using house::Range;
using Answer = Result<Json>;

Answer ask_glazing(ObjectReader& question);
Answer ask_section(ObjectReader& question);
Answer ask_comfort(ObjectReader& question);
Answer ask_room(ObjectReader& question);
Answer ask_leak(ObjectReader& question);
Answer ask_moisture(ObjectReader& question);
Answer ask_thermography(ObjectReader& question);
Answer ask_year(ObjectReader& question);
Answer ask_label(ObjectReader& question);
Answer ask_words(ObjectReader& question);
Answer ask_find_out(ObjectReader& question);
/// Takes the text itself: a house file has a reader of its own.
Answer ask_house(std::string_view text);

/// Ends reading: the fault, if any. A field that nobody asked for is one.
std::optional<Problem> settle(ObjectReader& question);

/// The warnings as an array of sentences.
Json sentences(const Warnings& warnings);

/// null where the quantity does not exist: no temperature factor without a temperature difference,
/// no outdoor temperature that wets a surface which never gets wet.
Json number_or_null(double number);

/// All about the person at the window, as the questions `room` and `house` answer it.
Json seat_answer(const physics::SeatResult& seat);

/// Ranges that several questions share.
inline constexpr Range air_range_c{-100, 100};
inline constexpr Range fraction_range{0, 1};
inline constexpr Range length_range_m{0.01, 100}; ///< of windows and rooms
inline constexpr Range speed_range_m_s{0, 100};
inline constexpr Range met_range{0.5, 10}; ///< asleep … hard sport
inline constexpr Range clo_range{0, 10};

} // namespace shimlight::door
