// SPDX-License-Identifier: MIT
#include "opening/words.hpp"
#include "opening/word_rows.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <optional>

namespace shimlight::opening {

namespace {

constexpr std::size_t most_bytes = 2000, longest_phrase = 4;

bool is_letter(char c) {
    // Beyond ASCII everything counts as a letter: it ends up among the unknown words.
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '.' || c == '/' ||
           static_cast<unsigned char>(c) >= 0x80;
}

/// Small words; what is neither letter nor digit parts them.
std::vector<std::string> split(std::string_view text) {
    std::vector<std::string> words(1);
    for (const char c : text.substr(0, most_bytes)) {
        const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if (is_letter(small))
            words.back() += small;
        else if (!words.back().empty())
            words.emplace_back();
    }
    for (std::string& word : words)
        while (!word.empty() && (word.back() == '.' || word.back() == '/'))
            word.pop_back();
    words.erase(std::remove(words.begin(), words.end(), ""), words.end());
    return words;
}

std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t count) {
    std::string text;
    for (std::size_t i = from; i < from + count; ++i)
        text += (i > from ? " " : "") + words[i];
    return text;
}

bool is_turning(const std::string& word) {
    return word == "no" || word == "not" || word == "without";
}

/// The choice of that key, or else the first whose key has it within.
std::optional<double> choice_of(const Field& field, std::string_view text) {
    for (std::size_t i = 0; i < field.choices.size(); ++i)
        if (field.choices[i].key == text) return static_cast<double>(i);
    for (std::size_t i = 0; i < field.choices.size(); ++i)
        if (field.choices[i].key.find(text) != std::string_view::npos)
            return static_cast<double>(i);
    return {};
}

/// Empty when this build has no such choice.
std::optional<double> value_of(const Field& field, std::string_view text) {
    if (field.choices.empty()) return std::strtod(std::string(text).c_str(), nullptr);
    for (;;) {
        const std::size_t bar = std::min(text.find('|'), text.size());
        if (const auto value = choice_of(field, text.substr(0, bar))) return value;
        if (bar == text.size()) return {};
        text.remove_prefix(bar + 1);
    }
}

class Listener {
  public:
    explicit Listener(std::string_view text) : words_(split(text)) {}

    WordsAnswer answer() {
        for (std::size_t at = 0; at < words_.size();)
            at += listen(at);
        assume();
        apply();
        return std::move(answer_);
    }

  private:
    /// How many words were taken.
    std::size_t listen(std::size_t at) {
        if (const std::size_t taken = hear_size(at)) return taken;
        const bool turned = is_turning(words_[at]) && at + 1 < words_.size();
        const std::size_t from = at + (turned ? 1 : 0);
        for (std::size_t count = std::min(longest_phrase, words_.size() - from); count > 0; --count)
            if (const WordRow* row = find(joined(words_, from, count))) {
                hear(*row, joined(words_, at, from - at + count), turned);
                return from - at + count;
            }
        if (!is_filler(words_[at])) answer_.unknown.push_back(words_[at]);
        return 1;
    }

    static const WordRow* find(const std::string& phrase) {
        for (const WordRow& row : word_rows())
            if (row.phrase == phrase) return &row;
        return nullptr;
    }

    void hear(const WordRow& row, const std::string& words, bool turned) {
        if (turned && row.turned.empty()) {
            answer_.unknown.push_back(words);
            return;
        }
        for (const WordSet& set : row.sets) {
            if (set.key.empty()) break;
            const Field& field = *find_field(set.key);
            const auto value = value_of(field, turned ? row.turned : set.value);
            if (value)
                note({words, &field, *value}, row.by_default);
            else
                answer_.unknown.push_back(words);
            if (turned) break;
        }
    }

    void note(const Heard& heard, bool by_default) {
        std::vector<Heard>& list = by_default ? usual_ : answer_.understood;
        for (Heard& before : list) {
            if (before.field != heard.field) continue;
            if (before.value != heard.value && !by_default)
                answer_.doubts.push_back("\"" + before.words + "\" and \"" + heard.words +
                                         "\" do not go together; the later counts.");
            before = heard;
            return;
        }
        list.push_back(heard);
    }

    /// "36 x 60 in" as six words or fewer: "36", "x", "60", "in"; the unit may be missing.
    std::size_t hear_size(std::size_t at) {
        if (at + 2 >= words_.size() || (words_[at + 1] != "x" && words_[at + 1] != "by")) return 0;
        char* end = nullptr;
        const double width = std::strtod(words_[at].c_str(), &end);
        if (*end != 0 || width <= 0) return 0;
        const double height = std::strtod(words_[at + 2].c_str(), &end);
        const std::string unit = *end != 0 ? end : at + 3 < words_.size() ? words_[at + 3] : "";
        const bool own_word = *end == 0;
        const double m = metres(unit);
        if (height <= 0 || m == 0) return 0;
        const std::size_t taken = own_word ? 4 : 3;
        const std::string said = joined(words_, at, taken);
        note({said, find_field("width_m"), width * m}, false);
        note({said, find_field("height_m"), height * m}, false);
        return taken;
    }

    static double metres(const std::string& unit) {
        constexpr std::array<std::pair<std::string_view, double>, 8> units{{{"in", 0.0254},
                                                                            {"inch", 0.0254},
                                                                            {"inches", 0.0254},
                                                                            {"ft", 0.3048},
                                                                            {"feet", 0.3048},
                                                                            {"cm", 0.01},
                                                                            {"mm", 0.001},
                                                                            {"m", 1}}};
        for (const auto& [name, m] : units)
            if (name == unit) return m;
        return 0;
    }

    bool told(std::string_view key) const {
        for (const Heard& heard : answer_.understood)
            if (heard.field->key == key) return true;
        return false;
    }

    /// What age and fittings let expect, what coating and gas need, and what stays as it is.
    void assume() {
        for (const Heard& heard : usual_)
            if (!told(heard.field->key)) answer_.understood.push_back(heard);
        const bool needs_gap = told("glazing.coating") || told("glazing.gas") ||
                               told("glazing.gas_share") || told("glazing.spacer");
        if (needs_gap && !told("glazing.panes"))
            answer_.assumed.push_back({"", find_field("glazing.panes"), 2});
        if (told("glazing.gas_share") && !told("glazing.gas"))
            answer_.assumed.push_back({"", find_field("glazing.gas"), 1});
    }

    void set(const Heard& heard) {
        if (set_field(answer_.described, *heard.field, heard.value))
            answer_.doubts.push_back("\"" + heard.words + "\" cannot be as said: " +
                                     std::string(heard.field->limit_reason));
    }

    /// In the order of the table, in which what a choice needs comes before the choice.
    void apply() {
        for (const Field& field : fields()) {
            for (const Heard& heard : answer_.assumed)
                if (heard.field == &field) set(heard);
            for (const Heard& heard : answer_.understood)
                if (heard.field == &field) set(heard);
        }
        constexpr std::string_view matter[] = {
            "frame",       "glazing.panes",     "glazing.coating", "glazing.storm", "sash.fit",
            "sash.locked", "sash.weatherstrip", "shim.fill",       "casing.seal",   "installation"};
        for (const std::string_view key : matter) {
            const Field& field = *find_field(key);
            const auto is_field = [&](const Heard& heard) { return heard.field == &field; };
            if (told(key) || !applies(field, answer_.described) ||
                std::any_of(answer_.assumed.begin(), answer_.assumed.end(), is_field))
                continue;
            answer_.assumed.push_back({"", &field, field.get(answer_.described)});
        }
    }

    std::vector<std::string> words_;
    std::vector<Heard> usual_;
    WordsAnswer answer_;
};

} // namespace

WordsAnswer from_words(std::string_view text) {
    return Listener(text).answer();
}

std::string value_in_words(const Field& field, double value) {
    if (field.quantity == Quantity::choice)
        return std::string(field.choices[static_cast<std::size_t>(value)].label);
    if (field.quantity == Quantity::yes_no) return value >= 0.5 ? "yes" : "no";
    char text[32];
    std::snprintf(text, sizeof text, "%g", value);
    return text;
}

} // namespace shimlight::opening
