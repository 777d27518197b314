// SPDX-License-Identifier: MIT
// Why: any figure on a screen opens a card that tells what it is, how it came about, where the
// method is from, how far it can be trusted, and what it depends on most.
#pragma once

#include "assess/figures.hpp"
#include "view/figure_text.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace shimlight::view {

/// What a lever's small step does to the figure; NaN beyond the lever's limits.
struct Effect {
    const opening::Field* field = nullptr;
    double step = 0; ///< SI
    double up = 0, down = 0;
};

/// The open card, if any, and what it has computed for it.
class Why {
  public:
    bool open() const { return !key_.empty(); }
    /// `number` is the node of the pressed number, whose text the card repeats; where it is not on
    /// the screen the figure tells itself.
    void show(std::string_view key, Shown of, std::string_view number = {});
    /// Whether the open card is about this number, so that its screen may tell how it came about.
    bool asks(std::string_view number) const { return open() && number_ == number; }
    void tell(std::string formula) { told_ = std::move(formula); }
    void close();
    /// Draws the card over the page; nothing when none is open. Last but for drop-downs.
    SHIMLIGHT_REST void draw(Ui& ui, Session& session);

  private:
    std::string key_;                   ///< of a card
    std::string number_, name_, value_; ///< of the pressed number
    std::string told_;                  ///< its formula, by its screen
    Shown of_ = Shown::today;
    bool fresh_ = false; ///< opened in this very frame: its press must not close it
    Scroll scroll_;
    float head_px_ = 92, content_px_ = 0;
    // Computed for this revision.
    int revision_ = -1;
    Units units_ = Units::us;
    std::size_t next_ = 0; ///< first lever not yet tried, in half steps
    std::optional<double> base_;
    std::vector<Effect> effects_;
    std::string ends_; ///< what the estimated inputs' ends make of it
    std::unique_ptr<assess::Assessor> drafts_;

    void compute(Ui& ui, const Session& session);
    double figure_of(const opening::Case& changed, const opening::Case& c,
                     const assess::Assessment& now, const assess::Figure& figure);
    bool try_next(const opening::Case& c, const assess::Assessment& now,
                  const assess::Figure& figure, Units units, const Trade& trade);
    float body(Ui& ui, Session& session, Box box, float y);
    float dependence(Ui& ui, const Trade& trade, Box box, float y);
    float parts(Ui& ui, const Session& session, Box box, float y);
    float head(Ui& ui, const Session& session, Box in, float top);
    bool find_number(const Ui& ui, const Session& session);
    void other(Ui& ui, const Session& session, Box place);
    void buttons(Ui& ui, Box box, const std::string& copied);
};

/// A drawn number that tells itself and opens its card; `touch` is where a finger opens it.
void figure(Ui& ui, std::string_view id, Box box, std::string_view name, std::string_view value,
            std::string_view key, Shown of);
/// Opens the card when `touch` is pressed.
void figure_touch(Ui& ui, std::string_view id, Box touch, std::string_view key, Shown of);

/// Words that cards of figures and cards of pages share.
namespace card_words {
inline constexpr std::string_view balance = "ISO 15099:2003, heat balance of all panes and gaps.";
inline constexpr std::string_view year_heat =
    "Heat that this opening asks of the heater in a year.";
inline constexpr std::string_view year_cost =
    "What the heat of a year through this opening costs in fuel.";
} // namespace card_words

/// The words of a card. `what`, `source` and `range` are sentences, in SI; `parts` are the keys of
/// figures that it is made of, each with a card of its own.
struct CardText {
    std::string_view key, what, source, range, parts = {};
};
const CardText& card_text(std::string_view key);
/// Cards of the numbers that are no named figures: of pages, sums, single ribbons.
std::span<const CardText> page_cards();
/// The figure whose levers are tried for this card: its own, or the one a page's number leans on;
/// null where none moves it.
const assess::Figure* tried_figure(std::string_view key);
/// How a number of a page comes about; empty where its screen tells it, or none can.
std::string page_formula(std::string_view key, const Session& session, Shown of, Units units);

/// The formula with its actual values; empty where it is a solution that no line can hold.
std::string why_formula(std::string_view key, const opening::Case& c, const assess::Assessment& a,
                        Units units, const Trade& trade);

/// The figure of a changed case without solving sections; empty when that needs one.
std::optional<double> quick_figure(const assess::Figure& figure, const opening::Case& changed,
                                   const opening::Case& now, const assess::Assessment& result);

/// The same of a figure that needs sections. `drafts` has been asked for the case itself first; its
/// grids are used for all that is near it, and only the cuts that matter are solved.
double section_figure(const assess::Figure& figure, const opening::Case& changed,
                      const assess::Assessment& now, assess::Assessor& drafts);

/// The step by which a lever is tried: small, and round in the reader's units. 0 for choices.
double try_step(const opening::Field& field, Units units, const Trade& trade = {});

} // namespace shimlight::view
