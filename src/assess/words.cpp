// SPDX-License-Identifier: MIT
#include "assess/words.hpp"

#include <cctype>
#include <cmath>

namespace shimlight::assess {

namespace {

struct Fraction {
    double value;
    std::string_view words;
};

constexpr Fraction fractions[] = {
    {0.1, "a tenth"},         {0.2, "a fifth"},     {0.25, "a quarter"},   {1.0 / 3, "a third"},
    {0.4, "two fifths"},      {0.5, "half"},        {0.6, "three fifths"}, {2.0 / 3, "two thirds"},
    {0.75, "three quarters"}, {0.8, "four fifths"}, {0.9, "nine tenths"},
};
constexpr double nearly_all = 0.95, hardly_any = 0.05;

} // namespace

std::string_view share_in_words(double share) {
    if (share >= nearly_all) return "nearly all";
    if (share < hardly_any) return "hardly any";
    Fraction nearest = fractions[0];
    for (const Fraction& fraction : fractions)
        if (std::fabs(fraction.value - share) < std::fabs(nearest.value - share))
            nearest = fraction;
    return nearest.words;
}

std::string temperature_in_words(double c, bool fahrenheit) {
    const long degrees = std::lround(fahrenheit ? 32 + 1.8 * c : c);
    const std::string sign = degrees < 0 ? "\u2212" : "";
    return sign + std::to_string(std::labs(degrees)) + (fahrenheit ? "\u00a0°F" : "\u00a0°C");
}

std::string difference_in_words(double k, bool fahrenheit) {
    return std::to_string(std::lround(fahrenheit ? 1.8 * k : k)) +
           (fahrenheit ? "\u00a0°F" : "\u00a0°C");
}

std::string speed_in_words(double m_s, bool us_units) {
    constexpr double mph_per_m_s = 3600 / 1609.344;
    return std::to_string(std::lround(us_units ? m_s * mph_per_m_s : m_s)) +
           (us_units ? "\u00a0mph" : "\u00a0m/s");
}

std::string percent_in_words(double share) {
    return std::to_string(std::lround(100 * share)) + "\u00a0%";
}

std::string money_in_words(double amount, std::string_view currency, std::string_view apart) {
    std::string size = std::to_string(std::lround(amount));
    const std::size_t first = size[0] == '-' ? 4 : 3;
    for (std::size_t at = size.size(); at > first;)
        size.insert(at -= 3, apart);
    return std::string(currency) + size;
}

std::string people_in_words(double pct) {
    return std::to_string(std::lround(pct)) + " of 100 people";
}

std::string listed(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        std::string name = names[i];
        if (i > 0 && !name.empty())
            name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
        text += (i == 0 ? "" : " plus ") + name;
    }
    return text;
}

std::string fill(std::string_view phrase, std::initializer_list<std::string_view> values) {
    std::string text;
    for (std::size_t i = 0; i < phrase.size(); ++i) {
        const bool slot = phrase[i] == '{' && i + 2 < phrase.size() && phrase[i + 2] == '}';
        const auto index = slot ? static_cast<std::size_t>(phrase[i + 1] - '0') : values.size();
        if (index < values.size()) {
            text += values.begin()[index];
            i += 2;
        } else {
            text += phrase[i];
        }
    }
    return text;
}

std::string within_sentence(std::string name) {
    for (const std::string_view article : {"A ", "An ", "The "})
        if (name.compare(0, article.size(), article) == 0)
            name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    return name;
}

std::string capitalised(std::string text) {
    if (!text.empty())
        text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    return text;
}

} // namespace shimlight::assess
