// SPDX-License-Identifier: MIT
// Money and energy in words: ranges, bases, reasons.
#pragma once

#include "assess/plans.hpp"
#include "house/money.hpp"
#include "view/session.hpp"
#include "view/trade.hpp"

#include <string>

namespace shimlight::view {

std::string whole(double v);                          ///< "412"
std::string tenths(double v);                         ///< "41.2"; whole from 100
std::string one_digit(double v);                      ///< "41.2" at any size
std::string cents(double amount, const Trade& trade); ///< "$1.76"
std::string plural(std::string unit);                 ///< "therms"; kWh stays

/// "412 → 180", or the first alone.
std::string pair_words(const std::string& today, const std::string& remedy, bool two);

std::string between_money(const house::Ranged& range, const Trade& trade);
std::string between_years(const house::Ranged& range);
std::string between_mass(const house::Ranged& range, Units units);

/// What the ranges are, in plain words; `what` was varied.
std::string range_words(const std::string& what);

/// Hours, rate and material that make the price.
std::string work_words(const opening::Remedy& remedy, double hour, const Trade& trade);

/// What share of what is saved.
std::string share_words(const assess::Assessment& today, const assess::Assessment& remedy,
                        Units units);
/// Of the house around the window, see assess::YearHouse.
std::string ordinary_size(Units units);

/// What a year of its warmer room takes, "$38"; empty where the remedy leaves the thermostat.
std::string warmer_cost(const Session& session, const opening::Remedy& remedy);
std::string warmer_words(const std::string& cost, Units units);

/// What speaks for the remedy besides money.
std::string reasons_words(const house::Money& money, const assess::Assessment& today,
                          const assess::Assessment& remedy);

std::string measure_words(const assess::Plan& plan, const house::Ranged& saving,
                          const Trade& trade);

} // namespace shimlight::view
