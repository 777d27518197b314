// SPDX-License-Identifier: MIT
#include "section/attempt.hpp"
#include "section/gradual_solve.hpp"
#include "section/kept_section.hpp"
#include "section/validation.hpp"

#include <chrono>

namespace shimlight::section {
namespace {

using Clock = std::chrono::steady_clock;

double since_ms(Clock::time_point start) {
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

Field timed(Field field, Clock::time_point start) {
    field.solve_ms = since_ms(start);
    return field;
}

} // namespace

Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm) {
    const Clock::time_point start = Clock::now();
    if (std::optional<Problem> fault = find_problem(painting)) return *fault;
    Attempt attempt(painting, accuracy);
    if (std::optional<Problem> fault = attempt.solve(warm)) return *fault;
    return timed(attempt.take(), start);
}

GradualSolve::GradualSolve(const Painting& painting, Accuracy accuracy, const Field* warm)
    : fault_(find_problem(painting)) {
    const Clock::time_point start = Clock::now();
    if (fault_) return;
    attempt_ = std::make_unique<Attempt>(painting, accuracy);
    fault_ = attempt_->begin(warm);
    taken_ms_ = since_ms(start);
}

GradualSolve::~GradualSolve() = default;
GradualSolve::GradualSolve(GradualSolve&&) noexcept = default;
GradualSolve& GradualSolve::operator=(GradualSolve&&) noexcept = default;

bool GradualSolve::step() {
    if (fault_ || attempt_->done()) return false;
    const Clock::time_point start = Clock::now();
    fault_ = attempt_->step();
    taken_ms_ += since_ms(start);
    return true;
}

Result<Field> GradualSolve::take() {
    if (fault_) return *fault_;
    const Clock::time_point start = Clock::now();
    Field field = attempt_->take();
    field.solve_ms = taken_ms_ + since_ms(start);
    return field;
}

KeptSection::KeptSection() = default;
KeptSection::~KeptSection() = default;
KeptSection::KeptSection(KeptSection&&) noexcept = default;
KeptSection& KeptSection::operator=(KeptSection&&) noexcept = default;

Result<Field> KeptSection::solve(const Painting& painting, Accuracy accuracy, const Field* warm) {
    return solve(painting, accuracy, warm, false);
}

Result<Field> KeptSection::glimpse(const Painting& painting, const Field* warm) {
    return solve(painting, Accuracy::draft, warm, true);
}

Result<Field> KeptSection::around(const Painting& painting, const Field* warm) {
    if (last_ && !find_problem(painting) && !last_->follows(painting))
        return section::solve(painting, Accuracy::draft, warm);
    return solve(painting, Accuracy::draft, warm, false);
}

bool KeptSection::settled() const {
    return !last_ || last_->settled();
}

Result<Field> KeptSection::solve(const Painting& painting, Accuracy accuracy, const Field* warm,
                                 bool hurried) {
    const Clock::time_point start = Clock::now();
    if (std::optional<Problem> fault = find_problem(painting)) return *fault;
    const bool same = last_ && accuracy_ == accuracy && hurried_ == hurried;
    followed_ = same && last_->follow(painting);
    if (followed_) return timed(last_->copy(), start);
    last_ = std::make_unique<Attempt>(painting, accuracy);
    if (hurried) last_->hurry();
    accuracy_ = accuracy;
    hurried_ = hurried;
    if (std::optional<Problem> fault = last_->solve(warm)) {
        last_ = nullptr;
        return *fault;
    }
    return timed(last_->copy(), start);
}

} // namespace shimlight::section
