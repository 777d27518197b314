// SPDX-License-Identifier: MIT
// Readings: which cause the draft has, by tests on site; what was read on the window, before and
// after the work, beside what is computed.
#pragma once

#include "assess/proof.hpp"
#include "view/column.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"

namespace shimlight::view {

/// What was read before the work or after it; airs that nobody wrote down are as the levers say.
assess::SiteReadings site_readings(const Session& session, bool after);

class Readings {
  public:
    SHIMLIGHT_REST void draw(Ui& ui, Session& session, Box box);

  private:
    /// What the answers and readings of this revision say.
    struct Said {
        int revision = -1;
        bool complete = false;  ///< whether the prediction was
        bool compared = false;  ///< whether the readings are
        bool explained = false; ///< and what explains those after the work
        Units units = Units::us;
        physics::DraftShare predicted;
        assess::FindOut found;
        std::optional<physics::InfraredRange> range;
        std::vector<physics::Likeness> likeness;
        assess::Proof proof;
    };
    Said said_;
    assess::SiteVisit before_, after_;
    assess::LeftUndone undone_;
    Scroll scroll_;
    float content_px_ = 0;

    bool known() const { return after_.done() && undone_.done(); }
    void compute(Ui& ui, const Session& session);
    void ask(const Session& session, Units units);
    void find_out(Ui& ui, Session& session, Column& column);
    void test(Ui& ui, Session& session, Column& column, std::size_t index);
    void before(Ui& ui, Session& session, Column& column);
    void glass(Ui& ui, Column& column);
    void said_of(Ui& ui, Column& column, const std::string& when, const assess::SiteVisit& visit);
    void gain(Ui& ui, Column& column, const std::string& id, opening::Part part) const;
    void proof(Ui& ui, Column& column);
    void after(Ui& ui, Session& session, Column& column);
};

} // namespace shimlight::view
