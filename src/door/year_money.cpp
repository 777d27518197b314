// SPDX-License-Identifier: MIT
// The question's money: fuel, work, rates and how far each may be off.
#include "door/year_question.hpp"
#include "house/fuels.hpp"

namespace shimlight::door {
namespace {

// Accepted ranges.
constexpr Range price{0, 1e6};
constexpr Range efficiency{0.05, 10};
constexpr Range kg_co2{0, 1e4};
constexpr Range hours{0, 1e4};
constexpr Range life_years{1, 200};
constexpr Range rate{-0.2, 0.5};
constexpr Range spread_share{0, 0.9};
constexpr Range spread_factor{1, 20};
constexpr Range spread_rate{0, 0.2};
constexpr Range seed{0, 1e9};

constexpr int usual_seed = 1;

house::EnergyPrice read_fuel(ObjectReader& money) {
    std::vector<std::string_view> names;
    for (const house::Fuel& fuel : house::fuels())
        names.push_back(fuel.name);
    const house::Fuel& fuel = house::fuels()[money.choice("fuel", names)];
    const double per_unit = money.number("price_per_unit", price);
    const double kg = money.number("kg_co2_per_unit", kg_co2, fuel.kg_co2_per_unit);
    return {per_unit / fuel.kwh_per_unit, money.number("efficiency", efficiency, fuel.efficiency),
            kg / fuel.kwh_per_unit};
}

void read_cooling(ObjectReader& money, house::MoneyInput& input) {
    input.cools = money.has("cooling");
    if (!input.cools) {
        money.find("cooling");
        return;
    }
    ObjectReader cooling = money.object("cooling");
    const house::EnergyPrice usual = input.cool;
    input.cool.per_kwh = cooling.number("price_per_kwh", price);
    input.cool.efficiency = cooling.number("cop", efficiency, usual.efficiency);
    input.cool.kg_co2_per_kwh = cooling.number("kg_co2_per_kwh", kg_co2, usual.kg_co2_per_kwh);
    cooling.finish();
}

house::Spread read_spread(ObjectReader spread) {
    house::Spread s;
    s.conduction = spread.number("conduction", spread_share, s.conduction);
    s.leakage_factor = spread.number("leakage_factor", spread_factor, s.leakage_factor);
    s.sun = spread.number("sun", spread_share, s.sun);
    s.cooling = spread.number("cooling", spread_share, s.cooling);
    s.house = spread.number("house", spread_share, s.house);
    s.price_of_fuel = spread.number("price_of_fuel", spread_share, s.price_of_fuel);
    s.price_of_work = spread.number("price_of_work", spread_share, s.price_of_work);
    s.escalation = spread.number("escalation", spread_rate, s.escalation);
    spread.finish();
    return s;
}

} // namespace

house::MoneyInput read_money(ObjectReader money, bool with_remedy) {
    house::MoneyInput input;
    input.heat = read_fuel(money);
    read_cooling(money, input);
    if (with_remedy) {
        input.work.hours = money.number("hours", hours);
        input.work.rate_per_h = money.number("rate_per_h", price);
        input.work.material = money.number("material", price);
        input.life_years = money.number("life_years", life_years, input.life_years);
        input.discount = money.number("discount", rate, input.discount);
        input.escalation = money.number("escalation", rate, input.escalation);
        input.spread = read_spread(money.object_or_empty("spread"));
        input.seed = static_cast<std::uint64_t>(money.count("seed", seed, usual_seed));
    }
    money.finish();
    return input;
}

} // namespace shimlight::door
