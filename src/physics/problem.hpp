// SPDX-License-Identifier: MIT
// What every room says when it cannot answer, and what it says when it can but should warn.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace shimlight {

/// A question that cannot be answered. `path` is a JSON pointer to the fault
/// ("/panes/0/thickness_m"), `message` says what is wrong and what is accepted.
struct Problem {
    std::string path;
    std::string message;
};

/// Either the answer or the reason why there is none.
template <class T> using Result = std::variant<T, Problem>;

template <class T> bool ok(const Result<T>& result) {
    return result.index() == 0;
}
template <class T> const T& value(const Result<T>& result) {
    return *std::get_if<0>(&result);
}
template <class T> T& value(Result<T>& result) {
    return *std::get_if<0>(&result);
}
template <class T> const Problem& problem(const Result<T>& result) {
    return *std::get_if<1>(&result);
}

/// Sentences for a valid question whose answer lies outside a tested range. Each names the range.
using Warnings = std::vector<std::string_view>;

/// Adds a sentence unless it is already there.
inline void warn_once(Warnings& warnings, std::string_view sentence) {
    for (const std::string_view& known : warnings) {
        if (known == sentence) return;
    }
    warnings.push_back(sentence);
}

/// Adds those of `more` that are not yet there.
inline void warn_once(Warnings& warnings, const Warnings& more) {
    for (const std::string_view& sentence : more)
        warn_once(warnings, sentence);
}

} // namespace shimlight
