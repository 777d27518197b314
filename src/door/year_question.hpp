// SPDX-License-Identifier: MIT
// What the question `year` asks: a window in a house in a climate, a remedy, money.
#pragma once

#include "assess/year.hpp"
#include "door/question.hpp"
#include "house/money.hpp"

#include <optional>
#include <string_view>

namespace shimlight::door {

struct YearQuestion {
    opening::Climate climate;
    std::string_view climate_note; ///< of the table
    assess::YearWindow window;
    std::optional<assess::YearWindow> remedy;
    assess::YearHouse house;
    double degree_day_base_c = 18;
    int day_of_month = 0; ///< 1…12, 0 when not asked for
    /// With the remedy the house is kept this much cooler, since the seat at the window is no
    /// longer cold.
    double thermostat_lower_k = 0;
    std::optional<house::MoneyInput> money;
};

/// Reads all fields; faults are in the reader's Reading.
YearQuestion read_year(ObjectReader& question);

/// Climate and money, in files of their own.
void read_climate(ObjectReader& question, YearQuestion& year);
house::MoneyInput read_money(ObjectReader money, bool with_remedy);

} // namespace shimlight::door
