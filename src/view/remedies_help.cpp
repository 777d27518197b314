// SPDX-License-Identifier: MIT
// What would help most here, in words with its numbers.
#include "house/materials.hpp"
#include "view/remedies.hpp"
#include "view/trade.hpp"

namespace shimlight::view {

/// The cheapest that solves it takes sections of a few plans: only for a page at rest.
void Remedies::advise(const Session& session, bool with_cheapest) {
    const house::OpeningRecord& record = session.record();
    const assess::Assessment& now = session.today_result();
    const std::size_t answers = record.answers.size();
    const assess::FindOut found = assess::find_out(now.seat.share, record.answers);
    assess::Chosen chosen;
    if (const auto remedy = session.priced_remedy())
        chosen = {remedy->name, assess::price_of(*remedy, session.house().hour),
                  &session.remedy_result()};
    assess::Cheapest cheapest;
    if (with_cheapest) {
        const opening::Case today = session.today();
        const assess::PlanQuestion question{today, now, record.remedies, session.house().hour,
                                            answers > 0 ? &found.share : nullptr};
        cheapest = assess::cheapest_plan(question, house::plans(session.house(), record, question));
    }
    advice_ =
        assess::advice(now, chosen.result ? &chosen : nullptr, with_cheapest ? &cheapest : nullptr,
                       found, answers, advice_style(session.house()));
}

void Remedies::help(Ui& ui, const Session& session, Column& column) {
    constexpr int frames_before = 2; // the page stands first
    const bool complete = session.today_result().complete && session.remedy_result().complete;
    if (revision_ != session.revision() || units_ != ui.units || complete_ != complete) {
        revision_ = session.revision();
        units_ = ui.units;
        complete_ = complete;
        waited_ = 0;
        advise(session, false);
    }
    const bool waits = waited_ <= frames_before;
    if (complete && waits && !ui.gesture.down) {
        if (++waited_ > frames_before) advise(session, true);
        ui.wishes.another_frame = true;
    }
    column.heading("remedies.help", "What would help most");
    const auto say = [&](const char* id, const char* name, const std::string& words, bool first) {
        column.sentence(id, name, words, first ? ui.theme.ink : ui.theme.soft);
    };
    say("remedies.help.cheapest", "The cheapest that solves it",
        waits ? "Still computing …" : advice_.cheapest, true);
    say("remedies.help.from", "Where the draft comes from", advice_.from, false);
    say("remedies.help.left", "What the chosen one leaves", advice_.left, false);
    say("remedies.help.cold", "What stays cold", advice_.still_cold, false);
    say("remedies.help.next", "Next test", advice_.next_test, false);
}

} // namespace shimlight::view
