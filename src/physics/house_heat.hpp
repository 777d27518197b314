// SPDX-License-Identifier: MIT
// A month of a whole house: what of its free gains heats, what its coolness takes of them. Monthly
// method of ISO 13790:2008 and ISO 52016-1 (formulas from memory; their constants 1 and 15 h read).
#pragma once

namespace shimlight::physics {

/// Share of the gains that replaces heating; `gain_ratio` is gains over losses. 1 where nothing is
/// gained, 1 / ratio where everything lost is covered.
double heating_utilisation(double gain_ratio, double exponent);

/// Share of the losses that takes gains away instead of cooling; equals ratio times the above.
double cooling_utilisation(double gain_ratio, double exponent);

/// 1 + time constant / 15 h. The time constant is the house's heat capacity over its conductance.
double utilisation_exponent(double capacity_j_k, double conductance_w_k);

/// Heat to be added or taken away, in the unit of losses and gains; never negative. Losses may be
/// negative (it is warmer outdoors), gains may not.
double heating_need(double losses, double gains, double exponent);
double cooling_need(double losses, double gains, double exponent);

/// A month's outdoor temperature and how the months of its year lie.
struct MonthTemperature {
    double mean_c = 0;
    double spread_over_year_k = 0; ///< standard deviation of the twelve monthly means
    int days = 30;
};

/// K·day below (`heating`) or above a base, from monthly means: Erbs, Klein and Beckman 1983 (from
/// memory). The days scatter about the month's mean, by less where it is warm.
double heating_degree_days_k(const MonthTemperature& month, double base_c);
double cooling_degree_days_k(const MonthTemperature& month, double base_c);

} // namespace shimlight::physics
