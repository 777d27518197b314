// SPDX-License-Identifier: MIT
// The house's page: all its openings in one table, and what the numbers are.
#include "assess/words.hpp"
#include "view/bill_words.hpp"
#include "view/report_words.hpp"

namespace shimlight::view {

using assess::fill;

namespace {

/// Openings with price, saving and people bothered; a sum below where there are several remedies.
void openings(Writer& out, const house::House& h, const std::vector<OpeningSum>& sums) {
    std::vector<Block::Row> rows;
    OpeningSum all;
    std::size_t remedies = 0;
    const Trade trade = trade_of(h);
    for (const OpeningSum& o : sums) {
        const bool any = !o.remedy.empty();
        remedies += any;
        // Of what is shown above, so that it adds up.
        all.price += shown_money(o.price);
        all.saving.low += shown_money(o.saving.low);
        all.saving.high += shown_money(o.saving.high);
        rows.push_back({o.name, any ? o.remedy : "none chosen",
                        any ? format_money(o.price, trade) : "–",
                        any ? between_money(o.saving, trade) : "–",
                        pair_words(format_percent(o.bothered_before_pct / 100),
                                   format_percent(o.bothered_after_pct / 100), any)});
    }
    if (remedies > 1)
        rows.push_back(
            {"Together", "", format_money(all.price, trade), between_money(all.saving, trade), ""});
    out.table("Openings and their remedies",
              {"Opening", "Remedy", "Price", "Saves a year", "Bothered"}, std::move(rows),
              remedies > 1 ? "openings sums" : "openings");
    out.sentence(
        "Bothered, today and with the remedy: of 100 people sitting there with bare ankles, so "
        "many would find the draft a bother; 20 or fewer is the standard's limit. Prices are "
        "estimates, no offer. " +
            range_words("weather, leaks and prices") +
            " All ends added up are farther apart than the sum would be by chance.",
        "soft");
}

void day(Writer& out, const house::House& h) {
    out.heading(2, "The day");
    const opening::Weather& w = h.weather;
    out.sentence(fill(
        "All numbers are for {0} outdoors and a wind of {1}; the year's for {2}.",
        {format_temperature(w.outside_c, h.units), format(Quantity::speed_m_s, w.wind_m_s, h.units),
         h.running.climate > 0
             ? "the climate of " + std::string(opening::climate_name(
                                       static_cast<std::size_t>(h.running.climate) - 1))
             : format(Quantity::degree_days_k, h.running.heating_degree_days_k, h.units) +
                   " of heating"}));
}

} // namespace

void write_house(Writer& out, const house::House& h, const std::vector<OpeningSum>& sums) {
    out.page("house");
    out.heading(1, h.name.empty() ? "House" : h.name);
    out.sentence(h.place, "place");
    out.sentence(h.notes);
    openings(out, h, sums);
    out.heading(2, "What was said");
    std::vector<Block::Row> said;
    for (const OpeningSum& o : sums)
        if (!o.complaint.empty()) said.push_back({o.name + ": “" + o.complaint + "”"});
    out.list(std::move(said));
    day(out, h);
    out.heading(2, "What the numbers are");
    out.sentence(
        "Temperatures come from a two-dimensional heat-flow solution of head, jamb, sill "
        "and meeting rail, checked with ISO 10211, and from a heat balance of the glass by "
        "ISO 15099; water by ISO 13788, comfort by ISO 7730 and ASHRAE 55-2020.");
    out.sentence("Falling air follows Eckert and Jackson 1950 and Heiselberg 1994, cracks Baker, "
                 "Sharples and Ward 1987 and Proskiw 1995; draft at the seat, leaks and a year's "
                 "money are engineering estimates, told with their ranges.");
    out.heading(2, "Take care");
    out.sentence("Paint from before 1978 may hold lead. Glass near floors and doors must be safety "
                 "glass, and a bedroom window may be the way out of a fire. Work at height, foam "
                 "and wiring can hurt. Check your local code; licensed practice decides.",
                 "warning");
    out.signatures();
}

} // namespace shimlight::view
