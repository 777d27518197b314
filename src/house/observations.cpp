// SPDX-License-Identifier: MIT
#include "house/observations.hpp"

#include "house/house.hpp"

namespace shimlight::house {
namespace {

// Words of the trade; what they speak for is common practice.
constexpr std::array<ObservationRow, observation_count> rows{{
    {"wind", "Worse in wind than on still nights", ""},
    {"tissue_sash", "Tissue blown sideways at the sash", ""},
    {"tissue_casing", "Tissue blown sideways at the casing", ""},
    {"smoke", "Incense smoke drifts at the casing", ""},
    {"light", "Light seen through the shim space", ""},
    {"rattle", "Sash rattles when pushed", ""},
    {"paper", "Paper slides out of the shut sash", ""},
    {"frost", "Frost on the glass",
     "The glass is below freezing and below the room's dew point: cold glass."},
    {"fog", "Water on the inside of the glass",
     "The glass is below the room's dew point: cold glass, or damp air."},
    {"between_panes", "Water or frost between the panes",
     "The seal of the glass has failed and its gas is gone; under a storm panel the inner sash "
     "lets room air out."},
    {"sill", "Sill stained, soft or rotten",
     "Water stands here or comes in: find out from where before anything is closed."},
    {"painted_shut", "Sash painted or nailed shut",
     "It cannot be pushed home nor opened: in a bedroom it may be the way out of a fire."},
    {"paint", "Paint flakes or chalks",
     "In a house from before 1978 take it for lead paint: dust control first."},
}};

constexpr std::size_t answer_yes = 0, answer_no = 1; ///< of a test with two answers

std::size_t test_of(const ObservationRow& row) {
    return static_cast<std::size_t>(assess::find_test(row.key) - assess::test_rows().data());
}

} // namespace

std::span<const ObservationRow> observation_rows() {
    return rows;
}

Seen seen(const OpeningRecord& record, std::size_t row) {
    if (!rows[row].is_test()) return record.observations[row];
    const std::size_t test = test_of(rows[row]);
    for (const assess::TestAnswer& given : record.answers)
        if (given.test == test) return given.answer == answer_yes ? Seen::yes : Seen::no;
    return Seen::not_looked;
}

void set_seen(OpeningRecord& record, std::size_t row, Seen value) {
    if (!rows[row].is_test()) {
        record.observations[row] = value;
        return;
    }
    const std::size_t test = test_of(rows[row]);
    std::erase_if(record.answers,
                  [test](const assess::TestAnswer& given) { return given.test == test; });
    if (value != Seen::not_looked)
        record.answers.push_back({test, value == Seen::yes ? answer_yes : answer_no});
}

} // namespace shimlight::house
