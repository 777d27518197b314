// SPDX-License-Identifier: MIT
// Numbers as words, for sentences.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace shimlight::assess {

/// "four fifths" for 0.78: the nearest plain fraction; "nearly all" from 0.95, "hardly any" below
/// 0.05.
std::string_view share_in_words(double share);

/// "57 °F" or "14 °C", whole degrees, with a real minus sign.
std::string temperature_in_words(double c, bool fahrenheit);

/// "5 °F" or "3 °C": a difference, whole degrees.
std::string difference_in_words(double k, bool fahrenheit);

/// "9 mph" or "4 m/s", whole.
std::string speed_in_words(double m_s, bool us_units);

/// "35 %", whole.
std::string percent_in_words(double share);

/// "$220", whole.
/// `apart` stands between its thousands.
std::string money_in_words(double amount, std::string_view currency, std::string_view apart = "");

/// "14 of 100 people"; whole people.
std::string people_in_words(double pct);

/// "Push home and lock plus foam the shim space": all names but the first begin small.
std::string listed(const std::vector<std::string>& names);

/// A phrase with {0}, {1}, … replaced; see phrases.hpp.
std::string fill(std::string_view phrase, std::initializer_list<std::string_view> values);

/// A remedy's name within a sentence: "a low-e storm" for "A low-e storm".
std::string within_sentence(std::string name);

/// With a capital first letter (ASCII).
std::string capitalised(std::string text);

} // namespace shimlight::assess
