// SPDX-License-Identifier: MIT
#include "door/house_readings.hpp"

#include "assess/proof.hpp"
#include "door/reading_answer.hpp"
#include "house/site_readings.hpp"

#include <array>

namespace shimlight::door {

using assess::ComparedPart;
using assess::ProvedPart;
using assess::SiteVisit;
using house::Visit;

namespace {

constexpr std::array<std::string_view, 5> standing_keys{"none", "too_small", "worked", "in_part",
                                                        "not_worked"};

Json part_answer(const ComparedPart& part, const SiteVisit& visit) {
    Json answer = object({{"part", part_key(part.part)},
                          {"surface_c", part.surface_c},
                          {"computed_c", part.computed_c},
                          {"range_k", part.range_k},
                          {"compared", compared_key(part.compared)},
                          {"explained", nullptr}});
    const assess::SurfaceReading* why = part.part != opening::Part::glass_centre
                                            ? visit.explained(part.part)
                                        : visit.glass() ? &*visit.glass()
                                                        : nullptr;
    if (why) answer["explained"] = reading_answer(*why);
    return answer;
}

Json visit_answer(const SiteVisit& visit) {
    if (!visit.site().any()) return nullptr;
    Json parts = Json::array();
    for (const ComparedPart& part : visit.parts())
        parts.push_back(part_answer(part, visit));
    return object({{"inside_c", visit.site().inside_c},
                   {"outside_c", visit.site().outside_c},
                   {"error_k", visit.site().error_k},
                   {"parts", std::move(parts)}});
}

Json proved_answer(const ProvedPart& part) {
    Json answer = object({{"part", part_key(part.part)},
                          {"read_c", part.read_c},
                          {"predicted_c", part.predicted_c},
                          {"difference_k", part.difference_k},
                          {"error_k", part.error_k},
                          {"compared", compared_key(part.compared)},
                          {"expected_k", part.expected_k},
                          {"gain_k", nullptr},
                          {"gain_error_k", nullptr},
                          {"told_apart", part.told_apart}});
    if (part.has_gain) {
        answer["gain_k"] = part.gain_k;
        answer["gain_error_k"] = part.gain_error_k;
    }
    return answer;
}

Json proof_answer(const assess::Proof& proof) {
    if (proof.standing == assess::Standing::none) return nullptr;
    Json parts = Json::array();
    for (const ProvedPart& part : proof.parts)
        parts.push_back(proved_answer(part));
    const auto standing = static_cast<std::size_t>(proof.standing);
    return object({{"standing", std::string(standing_keys[standing])},
                   {"parts", std::move(parts)},
                   {"suspect", std::string(proof.suspect)},
                   {"sentence", proof.sentence}});
}

void finish(SiteVisit& visit, bool explain) {
    while (!visit.step() && (explain || !visit.compared())) {
    }
}

Json find_out_answer(const house::OpeningRecord& record, const assess::Assessment& now,
                     const SiteVisit& before) {
    auto answers = record.answers;
    for (const assess::TestAnswer& one : assess::answers_of(before.parts()))
        answers.push_back(one);
    const assess::FindOut found = assess::find_out(now.seat.share, answers, before.site().any());
    Json answer = found_answer(found);
    answer["next"] = found.next ? Json(std::string(found.next->key)) : Json();
    return answer;
}

} // namespace

std::size_t visits_of(const house::OpeningRecord& record) {
    std::size_t count = 0;
    for (const Visit visit : {Visit::before, Visit::after})
        if (house::site_readings(record.site, {}, visit).any()) ++count;
    return count;
}

void add_readings(Json& answer, const ReadingsQuestion& q) {
    const bool us = q.house.units == house::Units::us;
    const house::Entries& site = q.record.site;
    const opening::Case remedy = house::remedy_case(q.house, q.record);
    SiteVisit before, after;
    before.ask(q.today, house::site_readings(site, q.today, Visit::before), us);
    after.ask(remedy, house::site_readings(site, q.today, Visit::after), us);
    finish(before, q.explain);
    finish(after, q.explain);
    assess::LeftUndone undone;
    undone.ask(q.today, remedy, after.site());
    while (q.explain && !undone.step()) {
    }
    answer["find_out"] = find_out_answer(q.record, q.now, before);
    answer["before"] = visit_answer(before);
    answer["after"] = visit_answer(after);
    answer["proof"] =
        proof_answer(assess::prove(before, after, undone, q.now.parts, q.today, remedy, us));
}

} // namespace shimlight::door
