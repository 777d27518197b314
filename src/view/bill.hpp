// SPDX-License-Identifier: MIT
// Bill: energy and money of this window, with every cheaper measure in the same picture.
#pragma once

#include "assess/plans.hpp"
#include "house/bill.hpp"
#include "view/house_bill.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class Bill {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box);

  private:
    struct Measure {
        assess::Plan plan;
        house::HeatParts saved; ///< a year, once solved
        house::Ranged saving;   ///< of money
        bool chosen = false;
    };

    Scroll scroll_;
    float content_px_ = 0;
    bool cools_ = false; ///< the house has a cooler
    bool moving_ = false;
    bool whole_ = false; ///< the whole house is shown
    HouseBill house_;
    int revision_ = -1;
    bool begun_ = false; ///< the money is that of `revision_`
    // Solved measure by measure, and kept as long as the house is the same but for prices.
    std::string solved_of_;
    std::vector<Measure> measures_;
    std::size_t solved_ = 0;
    // Of the results as they were when the money was drawn.
    house::Money money_;
    double life_years_ = 0, lower_k_ = 0, lower_kwh_ = 0;

    house::MoneyInput input(const Session& session, const assess::Assessment& then,
                            const opening::Remedy& remedy) const;
    void work_out(Ui& ui, const Session& session);
    void keep_or_begin_measures(const Session& session);
    void begin_measures(const Session& session);
    house::Ranged saving(const Session& session, const Measure& measure) const;
    void solve_one(const Session& session);

    void one_or_all(Ui& ui, const Session& session, Column& column);
    void place(Ui& ui, Session& session, Column& column);
    void energy(Ui& ui, const Session& session, Column& column) const;
    void fuel_and_price(Ui& ui, Session& session, Column& column);
    void payback(Ui& ui, const Session& session, Column& column) const;
    void tell_year(Ui& ui, const Session& session) const;
    void tell_months(Why& why, const Session& session) const;
    void tell_money(Ui& ui, const Session& session, const opening::Remedy& remedy) const;
    void thermostat(Ui& ui, const Session& session, Column& column) const;
    void list(Ui& ui, const Session& session, Column& column) const;
};

} // namespace shimlight::view
