// SPDX-License-Identifier: MIT
#include "door/answer.hpp"

namespace shimlight::door {

Member::Member(const char* key, double number) : key(key), value(number) {}
Member::Member(const char* key, std::string_view text) : key(key), value(std::string(text)) {}
Member::Member(const char* key, const char* text) : Member(key, std::string_view(text)) {}
Member::Member(const char* key, std::nullptr_t nothing) : key(key), value(nothing) {}
Member::Member(const char* key, std::initializer_list<Member> members)
    : key(key), value(object(members)) {}
Member::~Member() = default;

Json object(std::initializer_list<Member> members) {
    Json all = Json::object();
    for (const Member& member : members)
        all.emplace(member.key, std::move(member.value));
    return all;
}

Json numbers(std::initializer_list<double> values) {
    Json all = Json::array();
    for (const double value : values)
        all.push_back(value);
    return all;
}

} // namespace shimlight::door
