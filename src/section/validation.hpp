// SPDX-License-Identifier: MIT
// Whether a painting can be solved at all: everything that can be said region by region.
#pragma once

#include "physics/problem.hpp"
#include "section/painting.hpp"

#include <optional>
#include <string>

namespace shimlight::section {

/// The first fault of the painting, with its JSON pointer into the section question, or nothing.
/// Unpainted points are found later, when the cells are painted.
std::optional<Problem> find_problem(const Painting& painting);

/// One member name as a JSON pointer token (RFC 6901).
std::string token(const std::string& name);

} // namespace shimlight::section
