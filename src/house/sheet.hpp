// SPDX-License-Identifier: MIT
// Measuring, ordering and materials of one opening, from the tape's raw measures and the remedy;
// and the same of all openings as a table for a spreadsheet.
#pragma once

#include "house/materials.hpp"
#include "opening/daylight.hpp"

#include <string>

namespace shimlight::house {

struct Sheet {
    Order order;
    std::vector<MaterialLine> materials;
    opening::Daylight today, remedy;
    double hours = 0, labour = 0, material_cost = 0;
    MaterialCost cost; ///< of the material
    double total() const { return labour + material_cost; }
};
Sheet sheet(const House& house, const OpeningRecord& record);

/// What stands between two cells: a comma, or a semicolon for spreadsheets of countries whose
/// decimal sign is the comma.
enum class Separator : char { comma = ',', semicolon = ';' };

/// One row an opening and one for the house, RFC 4180 with a byte order mark. Numbers are whole
/// numbers (mm, cm², ml, minutes, currency), so that no decimal sign can be taken for another, nor
/// for a date; what is text stands in quotes and cannot become a formula, whichever separator the
/// spreadsheet expects.
std::string sheet_csv(const House& house, Separator separator = Separator::comma);

/// Inches as a tape shows them, to the sixteenth: "35 7/8 in". With its unit no spreadsheet takes
/// it for a date.
std::string inch_text(double m);

} // namespace shimlight::house
