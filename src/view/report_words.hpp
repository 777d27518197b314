// SPDX-License-Identifier: MIT
// The words of a report, made from the numbers that the screens show, by the same functions.
#pragma once

#include "assess/plans.hpp"
#include "assess/site_visit.hpp"
#include "house/bill.hpp"
#include "view/report_blocks.hpp"
#include "view/session.hpp"
#include "view/units.hpp"

namespace shimlight::view {

/// What the house's page tells of an opening.
struct OpeningSum {
    std::string name, complaint, remedy; ///< no remedy: empty
    double price = 0;
    house::Ranged saving; ///< a year
    double bothered_before_pct = 0, bothered_after_pct = 0;
};

/// An opening that is solved: what its pages are made from.
struct ReportQuestion {
    const Session& session; ///< with both assessments complete
    const assess::SiteVisit &before, &after;
    const assess::Cheapest& cheapest;
    Units units = Units::us;
};

std::string name_of(const house::OpeningRecord& record);

/// The cut through the wall where today's frame is coldest.
opening::Position coldest_cut(const assess::Assessment& today);

/// Front: what it is like, pictures, figures, money. Back: the particulars, for who does the work.
/// Figures are numbered from `picture`; a `title` stands above all.
void write_opening(Writer& out, const ReportQuestion& question, int picture,
                   const std::string& title);
OpeningSum sum_of(const Session& session);
/// The back alone.
void write_particulars(Writer& out, const ReportQuestion& question);

/// What the Bill reckons with as long as nobody has said more of the fuel. Needs a chosen remedy.
house::MoneyInput report_money_input(const Session& session);

void write_house(Writer& out, const house::House& house, const std::vector<OpeningSum>& sums);

} // namespace shimlight::view
