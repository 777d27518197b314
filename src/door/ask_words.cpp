// SPDX-License-Identifier: MIT
// Question `words`: a window described in words → the fields of a saved file.
#include "door/answer.hpp"
#include "opening/words.hpp"

namespace shimlight::door {

namespace {

constexpr std::size_t most_bytes = 2000;

Json field_value(const opening::Heard& heard) {
    const opening::Field& field = *heard.field;
    if (field.quantity == opening::Quantity::choice)
        return std::string(field.choices[static_cast<std::size_t>(heard.value)].key);
    if (field.quantity == opening::Quantity::yes_no) return heard.value >= 0.5;
    return heard.value;
}

Json list(const std::vector<std::string>& texts) {
    Json all = Json::array();
    for (const std::string& text : texts)
        all.push_back(text);
    return all;
}

} // namespace

Answer ask_words(ObjectReader& question) {
    if (!question.has("text")) question.reading().miss(question.path("text"), "a text");
    const std::string text = question.text("text", most_bytes, "");
    if (auto fault = settle(question)) return *fault;

    opening::WordsAnswer found = opening::from_words(text);
    Json understood = Json::array(), taken = Json::object();
    for (const opening::Heard& heard : found.understood)
        understood.push_back(object({{"words", heard.words},
                                     {"field", std::string(heard.field->key)},
                                     {"value", field_value(heard)}}));
    for (const opening::Heard& heard : found.assumed)
        taken[std::string(heard.field->key)] = field_value(heard);
    return object({{"understood", std::move(understood)},
                   {"taken_as", std::move(taken)},
                   {"unknown", list(found.unknown)},
                   {"doubts", list(found.doubts)}});
}

} // namespace shimlight::door
