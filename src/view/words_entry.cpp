// SPDX-License-Identifier: MIT
#include "view/words_entry.hpp"

#include "house/house_json.hpp"
#include "view/entry.hpp"
#include "view/units.hpp"

namespace shimlight::view {
namespace {

/// As much of the words as makes a name, whole words only.
std::string name_of(const std::string& text) {
    constexpr std::size_t longest = 48;
    if (text.size() <= longest) return text;
    const std::size_t end = text.rfind(' ', longest);
    return end == std::string::npos ? "In words" : text.substr(0, end);
}

std::string told(const std::vector<opening::Heard>& heard, Units units) {
    std::string all;
    for (const opening::Heard& one : heard) {
        if (!all.empty()) all += "; ";
        all += std::string(one.field->label) + ": ";
        const bool named = one.field->quantity == opening::Quantity::choice ||
                           one.field->quantity == opening::Quantity::yes_no;
        all += named ? opening::value_in_words(*one.field, one.value)
                     : format(one.field->quantity, one.value, units);
    }
    return all;
}

std::string together(const std::vector<std::string>& words, const char* between) {
    std::string all;
    for (const std::string& one : words)
        all += (all.empty() ? "" : between) + one;
    return all;
}

} // namespace

bool WordsEntry::tell(Ui& ui, Session& session, Column& column) const {
    const Theme& t = ui.theme;
    if (!found_.understood.empty())
        column.sentence("words.understood", "Understood",
                        "Understood: " + told(found_.understood, ui.units) + ".", t.ink);
    if (!found_.unknown.empty())
        column.sentence("words.unknown", "Not understood",
                        "Not understood: " + together(found_.unknown, ", ") + ".", t.worse);
    column.sentence("words.doubts", "Doubts", together(found_.doubts, " "), t.worse);
    if (found_.understood.empty()) return false;
    if (!found_.assumed.empty())
        column.sentence("words.assumed", "Assumed",
                        "Assumed: " + told(found_.assumed, ui.units) + ".", t.soft);
    house::House next = session.house();
    if (next.openings.size() >= house::max_openings) return false;
    if (!button(ui, "words.add", column.take(touch_px), "Add it as an opening")) return false;
    house::OpeningRecord record;
    record.name = name_of(text_);
    record.today = found_.described.opening;
    record.room = found_.described.room;
    record.chosen = -1;
    next.openings.push_back(std::move(record));
    next.selected = static_cast<int>(next.openings.size()) - 1;
    session.edit(std::move(next));
    return true;
}

bool WordsEntry::draw(Ui& ui, Session& session, Column& column) {
    column.heading("house.words", "A window in words");
    column.sentence("words.example", "Example",
                    "For instance: old wood hung window, single glass, storm, loose, 36 x 60 in.",
                    ui.theme.soft);
    const auto typed = typed_field(ui, "words.text", column.take(entry_height_px),
                                   {"Words", text_, "", "", Role::text});
    if (typed && *typed != text_) {
        text_ = *typed;
        found_ = opening::from_words(text_);
    }
    const bool added = !text_.empty() && tell(ui, session, column);
    if (added) text_.clear();
    column.space(14);
    return added;
}

} // namespace shimlight::view
