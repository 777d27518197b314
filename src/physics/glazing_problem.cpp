// SPDX-License-Identifier: MIT
// Which member of a glazing question is out of physical range, with its path and what is accepted.
#include "physics/glazing.hpp"

#include <cmath>
#include <string>
#include <utility>

namespace shimlight::physics {

namespace {

struct Range {
    double low, high;
    const char* accepted; ///< in words and unit
};

constexpr Range thickness{0.0005, 0.1, "0.0005 to 0.1 m"};
constexpr Range conductivity{0.01, 500, "0.01 to 500 W/mK"};
constexpr Range emissivity{0, 1, "0 to 1"};
constexpr Range gap_width{0.0005, 1, "0.0005 to 1 m"};
constexpr Range share{0, 1, "0 to 1"};
constexpr Range tilt{0, 180, "0 to 180 degrees"};
constexpr Range height{0.05, 50, "0.05 to 50 m"};
constexpr Range temperature{-100, 100, "-100 to 100 degrees C"};
constexpr Range wind{0, 100, "0 to 100 m/s"};
constexpr Range convection{0, 1000, "0 to 1000 W/m2K"};
constexpr Range film{0.01, 1000, "0.01 to 1000 W/m2K"};

constexpr double share_sum_tolerance = 1e-6; ///< rounding of typed-in shares, dimensionless

constexpr std::array<const char*, gas_count> gas_names{"air", "argon", "krypton", "xenon", "sf6"};

using Fault = std::optional<Problem>;

Fault outside_range(const std::string& path, double value, const Range& range) {
    if (std::isfinite(value) && value >= range.low && value <= range.high) return {};
    return Problem{path, std::string("is out of range; accepted: ") + range.accepted};
}

/// The first fault of several checks.
template <class... Rest> Fault first_of(Fault fault, Rest... rest) {
    if constexpr (sizeof...(rest) == 0) {
        return fault;
    } else {
        return fault ? fault : first_of(std::move(rest)...);
    }
}

Fault pane_fault(const Pane& pane, std::size_t i) {
    const std::string path = "/panes/" + std::to_string(i);
    return first_of(
        outside_range(path + "/thickness_m", pane.thickness_m, thickness),
        outside_range(path + "/conductivity_w_mk", pane.conductivity_w_mk, conductivity),
        outside_range(path + "/emissivity_out", pane.emissivity_out, emissivity),
        outside_range(path + "/emissivity_in", pane.emissivity_in, emissivity));
}

Fault gas_fault(const GasMixture& gas, const std::string& path) {
    double sum = 0;
    for (std::size_t i = 0; i < gas_count; ++i) {
        if (Fault fault = outside_range(path + "/" + gas_names[i], gas.fraction[i], share)) {
            return fault;
        }
        sum += gas.fraction[i];
    }
    if (std::abs(sum - 1) <= share_sum_tolerance) return {};
    return Problem{path, "gas shares must sum to 1"};
}

Fault gap_fault(const Gap& gap, std::size_t i) {
    const std::string path = "/gaps/" + std::to_string(i);
    return first_of(outside_range(path + "/width_m", gap.width_m, gap_width),
                    gas_fault(gap.gas, path + "/gas"));
}

Fault stack_fault(const GlazingStack& stack) {
    if (stack.pane_count < 1 || stack.pane_count > max_panes) {
        return Problem{"/panes", "has the wrong length; accepted: 1 to 4 panes"};
    }
    for (std::size_t i = 0; i < stack.pane_count; ++i) {
        if (Fault fault = pane_fault(stack.panes[i], i)) return fault;
    }
    for (std::size_t i = 0; i + 1 < stack.pane_count; ++i) {
        if (Fault fault = gap_fault(stack.gaps[i], i)) return fault;
    }
    return first_of(outside_range("/tilt_deg", stack.tilt_deg, tilt),
                    outside_range("/height_m", stack.height_m, height));
}

Fault sf6_fault(const GlazingStack& stack) {
    for (std::size_t i = 0; i + 1 < stack.pane_count; ++i) {
        if (stack.gaps[i].gas.fraction[static_cast<std::size_t>(Gas::sf6)] > 0) {
            return Problem{"/gaps/" + std::to_string(i) + "/gas/sf6",
                           "is known to the declared method only; accepted here: air, argon, "
                           "krypton, xenon"};
        }
    }
    return {};
}

Fault side_fault(const GlazingSide& side, const std::string& path) {
    return first_of(
        outside_range(path + "/air_c", side.air_c, temperature),
        outside_range(path + "/wind_m_s", side.wind_m_s, wind),
        outside_range(path + "/radiant_c", side.radiant_c.value_or(0), temperature),
        outside_range(path + "/convective_w_m2k", side.convective_w_m2k.value_or(0), convection));
}

} // namespace

std::optional<Problem> glazing_declared_problem(const GlazingStack& stack,
                                                double outside_film_w_m2k,
                                                double inside_film_w_m2k) {
    return first_of(stack_fault(stack),
                    outside_range("/outside/film_w_m2k", outside_film_w_m2k, film),
                    outside_range("/inside/film_w_m2k", inside_film_w_m2k, film));
}

std::optional<Problem> glazing_detailed_problem(const GlazingStack& stack,
                                                const GlazingSide& outside,
                                                const GlazingSide& inside) {
    if (Fault fault = stack_fault(stack)) return fault;
    return first_of(sf6_fault(stack), side_fault(outside, "/outside"),
                    side_fault(inside, "/inside"));
}

} // namespace shimlight::physics
