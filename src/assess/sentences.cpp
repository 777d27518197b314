// SPDX-License-Identifier: MIT
#include "assess/sentences.hpp"

#include "assess/phrases.hpp"
#include "assess/words.hpp"

#include <cmath>
#include <utility>

namespace shimlight::assess {

namespace {

// A room below both has no draft to speak of: ISO 7730:2005 category A and 6.2, from memory.
constexpr double little_draft_pct = 10, felt_m_s = 0.05;
// Speed of air at the ankles that nobody tells from another.
constexpr double noticed_m_s = 0.01;
// A cause below this share is not worth naming.
constexpr double named_share = 0.15;

bool leaks_outward(const Assessment& result) {
    return result.leak.sash_m3_s + result.leak.shim_m3_s < 0;
}

} // namespace

bool no_draft(const Assessment& result) {
    return result.seat.draft_rate_ankle_pct < little_draft_pct ||
           result.seat.ankle_speed_m_s < felt_m_s;
}

std::array<Cause, 3> causes(const physics::DraftShare& share, const physics::DraftShare& low,
                            const physics::DraftShare& high) {
    std::array<Cause, 3> all = {
        {{phrases::cold_glass, phrases::cold_glass, share.cold_glass, low.cold_glass,
          high.cold_glass},
         {phrases::sash, phrases::sash, share.sash_leak, low.sash_leak, high.sash_leak},
         {phrases::joint, phrases::joint_short, share.shim_leak, low.shim_leak, high.shim_leak}}};
    const auto order = [&](std::size_t a, std::size_t b) {
        if (all[b].share > all[a].share) std::swap(all[a], all[b]);
    };
    order(0, 1);
    order(1, 2);
    order(0, 1);
    return all;
}

std::string other_causes(const std::array<Cause, 3>& all) {
    std::string text;
    if (all[1].share >= named_share)
        text += fill(phrases::second, {share_in_words(all[1].share), all[1].words});
    if (all[2].share >= named_share) text += fill(phrases::third, {all[2].brief});
    return text;
}

std::string where_from(const Assessment& today) {
    if (no_draft(today)) return std::string(phrases::hardly_any);
    if (leaks_outward(today)) return std::string(phrases::outward);
    const auto all = causes(today.seat.share);
    return capitalised(fill(phrases::largest, {share_in_words(all[0].share), all[0].words})) +
           other_causes(all) + ".";
}

/// Drier or cooler air bothers more people by the same draft: only faster air is a worse one.
std::string what_is_left(const physics::SeatResult& today, const physics::SeatResult& remedy) {
    const double before_pct = today.ankle_bare_pct, after_pct = remedy.ankle_bare_pct;
    const std::string before = std::to_string(std::lround(before_pct));
    const std::string after = fill(phrases::bothered, {people_in_words(after_pct)});
    const bool faster = remedy.ankle_speed_m_s > today.ankle_speed_m_s + noticed_m_s;
    if (after_pct > before_pct + noticed_pct)
        return fill(faster ? phrases::worse : phrases::more, {after, before});
    if (after_pct > before_pct - noticed_pct) return fill(phrases::stays, {after});
    return fill(phrases::less, {after, before});
}

const PartSurface* coldest_glass(const Assessment& result) {
    const PartSurface* found = nullptr;
    for (const PartSurface& part : result.parts) {
        const bool glass =
            part.part == opening::Part::glass_centre || part.part == opening::Part::glass_edge;
        if (glass && (!found || part.surface_c < found->surface_c)) found = &part;
    }
    return found;
}

std::string_view place_of(opening::Part part) {
    return phrases::parts[static_cast<std::size_t>(part)];
}

std::string_view cut_word(opening::Position position) {
    return phrases::cuts[static_cast<std::size_t>(position)];
}

std::string place_and_cut(const PartSurface& surface) {
    const std::string place(place_of(surface.part));
    if (surface.part == opening::Part::glass_centre || surface.part == opening::Part::storm)
        return place;
    return fill(phrases::in_cut, {place, cut_word(surface.position)});
}

} // namespace shimlight::assess
