// SPDX-License-Identifier: MIT
#include "door/door.hpp"
#include "door/question.hpp"

#include <array>
#include <cmath>
#include <utility>

namespace shimlight::door {

namespace {

constexpr std::string_view error_start = "{\"error\":";

/// A question whose fields the reader walks through.
template <Answer (*ask)(ObjectReader&)> Answer from_object(std::string_view text) {
    const Result<Json> tree = house::parse_tree(text);
    if (!ok(tree)) return problem(tree);
    house::Reading reading;
    ObjectReader question(&value(tree), "", reading);
    Answer answer = ask(question);
    if (ok(answer)) value(answer)["assumed"] = reading.assumed();
    return answer;
}

struct Question {
    std::string_view name;
    Answer (*ask)(std::string_view text);
};

constexpr std::array questions{
    Question{"glazing", from_object<ask_glazing>},
    Question{"section", from_object<ask_section>},
    Question{"comfort", from_object<ask_comfort>},
    Question{"room", from_object<ask_room>},
    Question{"leak", from_object<ask_leak>},
    Question{"moisture", from_object<ask_moisture>},
    Question{"thermography", from_object<ask_thermography>},
    Question{"year", from_object<ask_year>},
    Question{"label", from_object<ask_label>},
    Question{"words", from_object<ask_words>},
    Question{"find_out", from_object<ask_find_out>},
    Question{"house", ask_house},
};

std::string names() {
    std::string text;
    for (const Question& question : questions) {
        text += (text.empty() ? "" : ", ") + std::string(question.name);
    }
    return text;
}

/// Path of the first number that JSON cannot write.
std::optional<std::string> find_non_finite(const Json& tree, const std::string& path) {
    if (tree.is_number_float() && !std::isfinite(tree.get<double>())) return path;
    if (!tree.is_structured()) return std::nullopt;
    std::size_t index = 0;
    for (auto it = tree.begin(); it != tree.end(); ++it, ++index) {
        const std::string below =
            tree.is_object() ? house::path_of(path, it.key()) : house::path_of(path, index);
        if (auto found = find_non_finite(*it, below)) return found;
    }
    return std::nullopt;
}

Answer answer_to(std::string_view question, std::string_view text) {
    for (const Question& known : questions) {
        if (known.name != question) continue;
        Answer answer = known.ask(text);
        if (!ok(answer)) return answer;
        if (const auto path = find_non_finite(value(answer), "")) {
            return Problem{"", "has no finite answer: " + *path +
                                   " of the answer cannot be computed from these values"};
        }
        return answer;
    }
    return Problem{"", "is not a question of this door; accepted is one of " + names()};
}

} // namespace

std::string ask(std::string_view question, std::string_view json) {
    const Answer answer = answer_to(question, json);
    if (ok(answer)) return house::write_line(value(answer));
    const Problem& fault = problem(answer);
    return house::write_line({{"error", {{"path", fault.path}, {"message", fault.message}}}});
}

bool is_error(std::string_view answer) {
    return answer.substr(0, error_start.size()) == error_start;
}

std::optional<Problem> settle(ObjectReader& question) {
    question.finish();
    house::Reading& reading = question.reading();
    if (!reading.unknown_fields().empty()) {
        const house::UnknownField& first = reading.unknown_fields().front();
        reading.fail(first.path, "is not a field of this question; accepted are " + first.accepted);
    }
    return reading.problem();
}

Json number_or_null(double number) {
    if (std::isfinite(number)) return number;
    return nullptr;
}

Json sentences(const Warnings& warnings) {
    Json list = Json::array();
    for (const std::string_view warning : warnings)
        list.push_back(std::string(warning));
    return list;
}

} // namespace shimlight::door
