// SPDX-License-Identifier: MIT
// Bill of the whole house: totals today and with the chosen remedies, each opening's remedy to
// choose by hand, the best set for a budget, and all remedies by what they bring for the money.
#pragma once

#include "house/house_bill.hpp"
#include "view/column.hpp"
#include "view/session.hpp"
#include "view/trade.hpp"

#include <optional>

namespace shimlight::view {

/// What money is told with.
struct Purse {
    std::size_t fuel = 0; ///< in house::fuels()
    bool cools = false;   ///< the house has a cooler
};

inline constexpr double budget_step = 10; ///< of money, as its lever steps

class HouseBill {
  public:
    /// One section, or one opening's estimates, or a step of the search; at rest nothing.
    void work(Ui& ui, const Session& session, const Purse& purse);
    void totals(Ui& ui, const Session& session, Column& column) const;
    void remedies(Ui& ui, Session& session, Column& column);

  private:
    struct Slot {
        std::string key;    ///< all that its answers depend on, its remedies apart
        bool begun = false; ///< the choices are those of the house
        int chosen = -1;    ///< in its choices
    };
    struct Job {
        int opening = -1, choice = -1; ///< -1: as it is
        bool there() const { return opening >= 0; }
    };
    struct Told { ///< of one opening, with its chosen remedy
        int chosen = -1;
        double price = 0;
        house::Ranged saving;
    };

    std::vector<Slot> slots_; ///< by opening, as is
    std::vector<house::HouseOpening> openings_;
    int revision_ = -1;
    double hour_ = 0;
    std::unique_ptr<assess::Assessor> worker_;
    // Of the chosen remedies, once all is known; the last ones stay up until then.
    bool told_ = false;  ///< there are some
    bool fresh_ = false; ///< they are those of now
    Purse purse_;
    house::HouseTotals today_, then_;
    house::Money money_;
    double life_years_ = 0;
    house::HouseNeed need_today_, need_then_;
    std::vector<Told> each_;
    // The search.
    std::vector<house::MixOpening> mix_;
    std::optional<house::MixSearch> every_, search_;
    std::vector<house::MixChoice> sets_; ///< empty until known
    std::optional<house::MixSet> set_, next_;
    bool settled_ = false; ///< all of the set is computed in full
    double budget_ = -1;
    int open_ = -1; ///< opening whose remedies are listed
    bool all_ = false;
    float best_px_ = 0; ///< height of what the search brings, kept free until it is there again

    void follow(const Session& session);
    void forget_search();
    Job next_job() const;
    Job next_of_set() const;
    bool estimated() const;
    std::size_t known() const;
    double most_budget() const;
    void solve(const Session& session, const Job& job);
    void tell(const Session& session, const Purse& purse);
    bool search();
    opening::Case case_of(const Session& session, const Job& job) const;
    house::Answers answers(bool then) const;
    const house::OpeningAnswer& answer(std::size_t opening, int choice) const;
    double bothered(const std::vector<int>& chosen) const;
    std::vector<int> chosen() const;
    double price(std::size_t opening, int choice) const;
    double shown_price(const std::vector<int>& chosen) const;
    std::string people(std::size_t opening, int choice) const;
    std::string set_people(const std::vector<int>& chosen, Units units) const;

    void take(Session& session, const std::vector<int>& chosen) const;
    void months(Ui& ui, const Trade& trade, Column& column) const;
    void money(Ui& ui, const Session& session, Column& column) const;
    void explain(Ui& ui, const Session& session) const;
    void by_hand(Ui& ui, Session& session, Column& column);
    void budget(Ui& ui, Session& session, Column& column);
    void best(Ui& ui, Session& session, Column& column);
    void draw_sets(Ui& ui, const Session& session, Column& column) const;
    void ranked(Ui& ui, const Session& session, Column& column);
};

} // namespace shimlight::view
