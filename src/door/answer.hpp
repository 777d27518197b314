// SPDX-License-Identifier: MIT
// Objects of an answer. The JSON library's own braces cost some 150 bytes of program a member;
// these, the same to write, a sixth of it.
#pragma once

#include "door/question.hpp"

#include <concepts>
#include <cstddef>
#include <initializer_list>
#include <utility>

namespace shimlight::door {

struct Member {
    const char* key;
    mutable Json value; ///< moved out of the list that holds it

    Member(const char* key, double number);
    Member(const char* key, std::string_view text);
    Member(const char* key, const char* text);
    Member(const char* key, std::nullptr_t nothing);
    Member(const char* key, std::initializer_list<Member> members);
    template <class Other>
    requires(!std::floating_point<std::remove_cvref_t<Other>> &&
             !std::convertible_to<Other, std::string_view>) Member(const char* key, Other&& other)
        : key(key), value(std::forward<Other>(other)) {}
    ~Member();
};

/// {{"a", 1.0}, {"b", {{"c", "text"}}}} as an object, members in this order.
Json object(std::initializer_list<Member> members);

/// The numbers as an array.
Json numbers(std::initializer_list<double> values);

} // namespace shimlight::door
