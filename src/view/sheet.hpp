// SPDX-License-Identifier: MIT
// Sheet: measuring, ordering and materials of this opening, what of glass and way out it costs,
// what can hurt someone at it, and what the house takes in all.
#pragma once

#include "house/sheet.hpp"
#include "view/column.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"
#include "view/trade.hpp"

namespace shimlight::view {

class SheetPage {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box);

  private:
    Scroll scroll_;
    float content_px_ = 0;
};

// Its parts, one under another in a column.
void sheet_tape(Ui& ui, Session& session, Column& column, const house::Order& order);
void sheet_order(Ui& ui, Session& session, Column& column, const house::Order& order);
void sheet_glass(Ui& ui, const Session& session, Column& column, const house::Sheet& sheet);
void sheet_work(Ui& ui, Session& session, Column& column, const house::Sheet& sheet);
void sheet_house(Ui& ui, Session& session, Column& column);
void sheet_cautions(Ui& ui, Session& session, Column& column);

/// A length as the tape shows it: "35 1/4 in", "89.5 cm".
std::string tape_text(double m, Units units);

/// "Backer rod, 5/8 in"; "0.6 cans", "18 ft". Bought by the piece: an opening's share as it is, the
/// house's rounded up once.
std::string material_name(const house::MaterialLine& line, Units units);
std::string material_amount(const house::MaterialLine& line, double can_l, bool house, Units units);

/// What each line costs, all else of the material, and labor: rounded together, so that they add
/// up.
struct ShownCosts {
    std::vector<double> lines;
    double rest = 0, labour = 0;
    double material() const;
};
ShownCosts shown_costs(const house::House& house, const std::vector<house::MaterialLine>& lines,
                       double rest, double labour);
/// "0.6 cans, $5"
std::string material_words(const house::House& house, const house::MaterialLine& line, double shown,
                           bool all);
/// Of the material what is not measured out.
inline constexpr const char* rest_of_material = "All else: unit, glass, fasteners";

/// How a number of the order or of the glass comes about, for its card.
std::string sheet_formula(std::string_view key, const Session& session, Shown of, Units units);

} // namespace shimlight::view
