// SPDX-License-Identifier: MIT
// What the remedy's work takes, from its geometry: one table of lines, needs of an opening, and
// what to buy for the house.
#pragma once

#include "assess/plans.hpp"
#include "house/order.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shimlight::house {

/// What a material line depends on.
struct Job {
    Method method = Method::none;
    opening::Case today, remedy;
};
Job job_of(const House& house, const OpeningRecord& record);

/// How much is told in.
enum class Measure { litres, length, pieces };

/// One material, by the method's geometry. Common practice throughout; `waste` is a share.
struct MaterialRow {
    std::string_view key, name;
    Measure measure = Measure::length; ///< of the need: litres, metres, pieces
    double waste = 0;
    double pack = 0; ///< so much is in one that is bought; 0: by length
    std::string_view pack_name;
    std::string_view formula;          ///< in words
    double price = 0;                  ///< usual, of a pack, a metre or a litre: an estimate
    double (*need)(const Job&) = {};   ///< without waste; 0: not used
    double (*size_m)(const Job&) = {}; ///< diameter or width that matters for buying; may be null
};
std::span<const MaterialRow> material_rows();

/// Need of one opening, or of the house: with waste, not rounded.
struct MaterialLine {
    const MaterialRow* row = nullptr;
    double need = 0;
    double size_m = 0;
};
/// In the order of the table; only what is used.
std::vector<MaterialLine> materials(const Job& work);

/// Of a pack, or of a metre or litre: the house's own or the usual one.
double unit_price(const House& house, const MaterialRow& row);
/// Set by hand; the usual one takes it back.
void set_unit_price(House& house, const MaterialRow& row, double price);
/// Of what is needed, packs in parts.
double line_price(const House& house, const MaterialLine& line);

/// A remedy's material: what is measured out at the house's prices, and all else that the remedy's
/// estimate holds beyond that at usual ones: the unit, glass, fasteners.
struct MaterialCost {
    double lines = 0, rest = 0;
    double usual = 0; ///< the lines at usual prices
    double sum() const { return lines + rest; }
};
MaterialCost material_cost(const House& house, const OpeningRecord& record,
                           const opening::Remedy& remedy);

/// The remedy with its material at the house's own prices. One without work and material has no
/// price yet, and stays so.
opening::Remedy priced(const House& house, const OpeningRecord& record, opening::Remedy remedy);

/// assess::plans at the house's own prices, cheapest first.
std::vector<assess::Plan> plans(const House& house, const OpeningRecord& record,
                                const assess::PlanQuestion& question);

/// In packs, whole and parts; metres or litres where there are none.
double bought(const MaterialLine& line, double can_l);
/// So many cans, cartridges, pieces hold the need; 0 where it is bought by length.
int packs(const MaterialLine& line, double can_l);

/// Sums of needs over all openings, by material and size: rounded up once, at the end.
struct HouseTotal {
    int openings = 0; ///< with a remedy
    int measured = 0; ///< of them with all measures
    double hours = 0, labour = 0, material_cost = 0;
    double rest = 0; ///< of the material, what is not measured out
    std::vector<MaterialLine> lines;
    double total() const { return labour + material_cost; }
};
HouseTotal house_total(const House& house);

} // namespace shimlight::house
