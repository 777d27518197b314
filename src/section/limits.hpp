// SPDX-License-Identifier: MIT
// What a section may be. Every limit that a painting is refused for stands here with its reason.
#pragma once

namespace shimlight::section {

/// Lines closer than this are one line, m: far below any layer that resists heat, far above the
/// round-off of coordinates of up to 100 m.
inline constexpr double merge_m = 1e-8;

inline constexpr double min_extent_m = 1e-4;          ///< of the whole section: a foil
inline constexpr double max_extent_m = 100;           ///< of the whole section: a building
inline constexpr double min_conductivity_w_mk = 1e-4; ///< ten times better than evacuated panels
inline constexpr double max_conductivity_w_mk = 1e4;  ///< above diamond (about 2000)
inline constexpr double min_film_w_m2k = 1e-3;        ///< R of 1000 m²K/W
inline constexpr double max_film_w_m2k = 1e6;         ///< boiling and beyond: a fixed surface
inline constexpr double min_temperature_c = -273.15;
inline constexpr double max_temperature_c =
    3000; ///< above the melting point of all but a few solids

inline constexpr double max_capacity_w_mk = 1e4; ///< 8 m³/s of air through a metre of joint
inline constexpr int max_streams = 100;
inline constexpr int max_reaches = 1000; ///< of one stream

inline constexpr int max_regions = 10000; ///< a question of 1 MiB holds about as many
inline constexpr int max_edges = 10000;
inline constexpr int max_airs = 1000;

/// Cells that the distinct edges of the regions make before any refinement: twice as many are
/// solved, in less than 64 MiB.
inline constexpr long long max_base_cells = 60000;

} // namespace shimlight::section
