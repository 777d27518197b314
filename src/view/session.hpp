// SPDX-License-Identifier: MIT
// The house being worked on, with the assessments of the opening on the screen.
#pragma once

#include "assess/assessment.hpp"
#include "house/history.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace shimlight::view {

enum class Shown { today, remedy };

class Session {
  public:
    explicit Session(house::House start) : opened_(start), history_(std::move(start)) {}

    // Of this visit alone.
    Shown shown =
        Shown::remedy;       ///< whose levers are moved; where there is room for one, who is seen
    bool heat_lines = false; ///< drawn over the picture
    std::string message;     ///< told until it is dismissed
    bool choosing_remedy = false; ///< the remedies lie over the screen

    std::string asked; ///< of a lesson's open question: conditions; figures in them are not shown

    bool is_asked(std::string_view figure_key) const {
        return asked.find(std::string(figure_key) + ".") != std::string::npos;
    }

    const house::House& house() const { return history_.now(); }
    const house::House& opened() const { return opened_; }
    const house::OpeningRecord& record() const;
    bool has_remedy() const;
    opening::Case today() const { return house::today_case(house(), record()); }
    opening::Case remedy() const { return house::remedy_case(house(), record()); }
    std::string remedy_name() const;
    /// The chosen one, its material at the house's own prices.
    std::optional<opening::Remedy> priced_remedy() const;
    /// By so much it raises the thermostat.
    double warmer_k(const opening::Remedy& remedy) const;

    /// Moves one lever, of Today or of the chosen Remedy; weather and money belong to both.
    void move(const opening::Field& field, double value, Shown of, const std::string& gesture);
    /// Any other change; `gesture` names a drag, empty for a step of its own.
    void edit(house::House next, const std::string& gesture = "");
    /// The value this lever goes back to: for the Remedy's Today's, for Today's the one the house
    /// was opened with.
    double earlier_value(const opening::Field& field, Shown of) const;
    /// From here on "as opened" means the house as it is now.
    void mark_opened() { opened_ = house(); }
    void settle() { history_.settle(); }
    void load(house::House house);

    bool can_undo() const { return history_.can_undo(); }
    bool can_redo() const { return history_.can_redo(); }
    void undo();
    void redo();

    /// Brings both assessments as far as the budget allows, those that wait in turn; true when
    /// there is more to do. While a lever moves only the cuts that are seen follow in each frame.
    bool assess(const assess::Budget& budget, bool both_seen);
    /// One section towards both; false when there is none to solve and assess() can tell all.
    bool refine(const assess::Budget& budget);
    /// Whether both can be told: at the very start they cannot.
    bool drafted() const {
        return today_.last().drafted && (!has_remedy() || remedy_.last().drafted);
    }
    const assess::Assessment& today_result() const { return today_.last(); }
    const assess::Assessment& result(Shown of) const {
        return of == Shown::today ? today_result() : remedy_result();
    }
    opening::Case shown_case(Shown of) const { return of == Shown::today ? today() : remedy(); }
    const assess::Assessment& remedy_result() const {
        return has_remedy() ? remedy_.last() : today_.last();
    }

    /// Another number after each change of the house, and in each session.
    int revision() const { return revision_; }

  private:
    house::House opened_;
    house::History history_;
    assess::Assessor today_, remedy_;
    bool remedys_turn_ = false; ///< to have cuts solved
    int revision_ = 0;
    int assessed_ = -1; ///< the revision of which all is known
    int waiting_ = -1;  ///< the one of which nothing more is known until something is refined
};

} // namespace shimlight::view
