// SPDX-License-Identifier: MIT
// Placeholders and conditions of lessons.
#include "house/lesson.hpp"

#include <cmath>
#include <cstdlib>

namespace shimlight::house {
namespace {

/// One figure named in a text.
struct Named {
    const assess::Figure* figure = nullptr;
    double value = 0;
};

std::string_view trimmed(std::string_view words) {
    while (!words.empty() && words.front() == ' ')
        words.remove_prefix(1);
    while (!words.empty() && words.back() == ' ')
        words.remove_suffix(1);
    return words;
}

/// "part.frame.remedy_was"
std::optional<Named> named(std::string_view words, const Stand& stand) {
    words = trimmed(words);
    const std::size_t dot = words.rfind('.');
    if (dot == std::string_view::npos) return std::nullopt;
    const assess::Figure* figure = assess::find_figure(words.substr(0, dot));
    std::string_view whose = words.substr(dot + 1);
    constexpr std::string_view before = "_was";
    const bool was =
        whose.size() > before.size() && whose.substr(whose.size() - before.size()) == before;
    if (was) whose.remove_suffix(before.size());
    if (!figure || (whose != "today" && whose != "remedy")) return std::nullopt;
    const FigureSet& set = was ? stand.was : stand.now;
    const auto index = static_cast<std::size_t>(figure - assess::figures().data());
    return Named{figure, set.of[whose == "remedy" ? 1 : 0][index]};
}

std::optional<std::string> told(std::string_view words, const Stand& stand, const Teller& teller) {
    for (const std::string_view sign : {" - ", " / "}) {
        const std::size_t at = words.find(sign);
        if (at == std::string_view::npos) continue;
        const auto a = named(words.substr(0, at), stand);
        const auto b = named(words.substr(at + sign.size()), stand);
        if (!a || !b || a->figure->kind != b->figure->kind) return std::nullopt;
        if (sign == " - ")
            return teller.say(*a->figure, std::fabs(a->value - b->value), Telling::difference,
                              teller.with);
        return teller.say(*a->figure, a->value / b->value, Telling::ratio, teller.with);
    }
    const auto one = named(words, stand);
    if (!one) return std::nullopt;
    return teller.say(*one->figure, one->value, Telling::value, teller.with);
}

/// "0.5 * ankles.today", "20", "ankles.remedy - ankles.today"
std::optional<double> term(std::string_view words, const Stand& stand) {
    if (const std::size_t minus = words.find(" - "); minus != std::string_view::npos) {
        const auto first = term(words.substr(0, minus), stand);
        const auto second = term(words.substr(minus + 3), stand);
        if (!first || !second) return std::nullopt;
        return *first - *second;
    }
    const std::size_t times = words.find('*');
    double factor = 1;
    if (times != std::string_view::npos) {
        const auto first = term(words.substr(0, times), stand);
        if (!first) return std::nullopt;
        factor = *first;
        words.remove_prefix(times + 1);
    }
    if (const auto figure = named(words, stand)) return factor * figure->value;
    const std::string digits(trimmed(words));
    char* end = nullptr;
    const double number = std::strtod(digits.c_str(), &end);
    if (digits.empty() || *end != 0 || !std::isfinite(number)) return std::nullopt;
    return factor * number;
}

std::optional<bool> compared(std::string_view words, const Stand& stand) {
    const std::size_t sign = words.find_first_of("<>");
    if (sign == std::string_view::npos) return std::nullopt;
    const auto left = term(words.substr(0, sign), stand);
    const auto right = term(words.substr(sign + 1), stand);
    if (!left || !right) return std::nullopt;
    return words[sign] == '<' ? *left < *right : *left > *right;
}

} // namespace

std::optional<std::string> filled(std::string_view text, const Stand& stand, const Teller& teller) {
    std::string out;
    for (;;) {
        const std::size_t open = text.find('{');
        out += text.substr(0, open);
        if (open == std::string_view::npos) return out;
        const std::size_t close = text.find('}', open);
        if (close == std::string_view::npos) return std::nullopt;
        const auto words = told(text.substr(open + 1, close - open - 1), stand, teller);
        if (!words) return std::nullopt;
        out += *words;
        text.remove_prefix(close + 1);
    }
}

std::optional<bool> holds(std::string_view condition, const Stand& stand) {
    constexpr std::string_view also = " and ";
    bool all = true;
    for (;;) {
        const std::size_t at = condition.find(also);
        const auto one = compared(condition.substr(0, at), stand);
        if (!one) return std::nullopt;
        all = all && *one;
        if (at == std::string_view::npos) return all;
        condition.remove_prefix(at + also.size());
    }
}

FigureSet read_figures(const opening::Case& today, const assess::Assessment& today_result,
                       const opening::Case& remedy, const assess::Assessment& remedy_result) {
    FigureSet set;
    const auto all = assess::figures();
    for (std::size_t i = 0; i < all.size(); ++i)
        set.of[0][i] = all[i].read(today, today_result),
        set.of[1][i] = all[i].read(remedy, remedy_result);
    return set;
}

} // namespace shimlight::house
