// SPDX-License-Identifier: MIT
// The saved file: a house with its openings, each as it is today with the remedies thought of.
#pragma once

#include "assess/find_out.hpp"
#include "assess/plans.hpp"
#include "house/entries.hpp"
#include "house/observations.hpp"
#include "opening/remedy.hpp"
#include "physics/problem.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace shimlight::house {

inline constexpr int format_version = 1;
inline constexpr std::size_t max_name_bytes = 200;
inline constexpr std::size_t max_remedies = 20; ///< of one opening
inline constexpr double max_hour = 1e4;         ///< price of an hour, in any currency
inline constexpr double usual_can_l = 12;       ///< in a narrow joint; 12 to 45 l are told of cans
inline constexpr double least_can_l = 1, most_can_l = 200;

/// A photograph of an opening. The page keeps the picture under its id; here are only words.
struct Photo {
    std::string id;    ///< 16 hexadecimal digits
    std::string words; ///< "stain under the sill"
};
inline constexpr std::size_t max_photos = 12; ///< of one opening
bool is_photo_id(std::string_view id);

struct OpeningRecord {
    std::string name;      ///< "bedroom, north"
    std::string room_name; ///< "Bedroom"; openings of one room stand together
    std::string complaint; ///< in the customer's words
    std::string notes;     ///< in the surveyor's
    opening::Opening today;
    opening::Room room;
    std::vector<opening::Remedy> remedies;
    int chosen = 0;                          ///< index into remedies; -1 when there is none
    std::vector<assess::TestAnswer> answers; ///< of the tests on site
    Entries site;                            ///< readings, measures, order
    Observations observations{};             ///< what was seen that is no test
    std::vector<Photo> photos;
};

/// What a material costs here, by what it is bought in; see MaterialRow.
struct UnitPrice {
    std::string_view key; ///< of its row
    double price = 0;
};
inline constexpr double max_unit_price = 1e5;    ///< in any currency
inline constexpr double max_material_cost = 1e7; ///< likewise, of a remedy

/// Units and currency travel with the house; light or dark belongs to the device.
enum class Units { us, si };

struct House {
    std::string name; ///< "Quince Street 9"
    std::string place;
    std::string notes;
    std::string currency = "$";
    double hour = assess::usual_hour;   ///< price of an hour of work
    double can_l = usual_can_l;         ///< litres of joint that a can of foam fills
    std::vector<UnitPrice> unit_prices; ///< own ones; others are usual
    Units units = Units::us;
    int fuel = -1; ///< in fuels(); -1: nobody has said, see fuel_of
    opening::Weather weather;
    opening::Running running;
    std::vector<OpeningRecord> openings;
    int selected = 0; ///< opening on the screen
};

/// nullptr when none is chosen.
const opening::Remedy* chosen_remedy(const OpeningRecord& record);

/// The case of an opening as it is, and with its chosen remedy (as it is when none is chosen).
opening::Case today_case(const House& house, const OpeningRecord& record);
opening::Case remedy_case(const House& house, const OpeningRecord& record);

/// Strict writer: kind, version, then every field, keys as in the field table. Numbers come back
/// exactly. The format is described in assets/house-format.md.
std::string to_json(const House& house);

/// Forgiving reader: missing fields take their defaults, unknown ones are named in `notes`;
/// wrong types, non-finite numbers and values out of range are a Problem with the path. The house
/// that comes back has at least one opening, `selected` and every `chosen` point to something.
struct Opened {
    House house;
    std::vector<std::string> notes;
};
Result<Opened> from_json(std::string_view text);

/// The house on first start: invented people, invented place, a winter morning.
House demo_house();

} // namespace shimlight::house
