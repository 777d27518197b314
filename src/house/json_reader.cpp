// SPDX-License-Identifier: MIT
#include "house/json_reader.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

namespace shimlight::house {

namespace {

constexpr std::size_t max_listed = 12; ///< choices named in a message

/// "is a string": what was found instead of what is accepted.
std::string found(const Json& value) {
    const std::string type = value.type_name();
    if (type == "null") return "is null";
    const bool vowel = type == "object" || type == "array";
    return (vowel ? "is an " : "is a ") + type;
}

std::string wrong_type(const Json& value, std::string_view accepted) {
    return found(value) + "; accepted is " + std::string(accepted);
}

std::string listed(std::span<const std::string_view> choices) {
    std::string text;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (i == max_listed) return text + " …";
        if (i > 0) text += i + 1 == choices.size() ? " or " : ", ";
        text += '"' + std::string(choices[i]) + '"';
    }
    return text;
}

} // namespace

std::string number_text(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.7g", value);
    return text;
}

std::string range_text(Range range) {
    return number_text(range.min) + " to " + number_text(range.max);
}

std::string out_of_range(double value, Range range) {
    return "is " + number_text(value) + "; accepted is " + range_text(range);
}

void Reading::fail(std::string path, std::string message) {
    if (!fault_) fault_ = Problem{std::move(path), std::move(message)};
}

void Reading::miss(std::string path, std::string_view accepted) {
    if (missing_) return;
    missing_ = Problem{std::move(path), "is missing; accepted is " + std::string(accepted)};
}

void Reading::assume(const std::string& path, Json value) {
    assumed_[path] = std::move(value);
}

void Reading::unknown(UnknownField field) {
    unknown_.push_back(std::move(field));
}

std::optional<Problem> Reading::problem() const {
    return fault_ ? fault_ : missing_;
}

ObjectReader::ObjectReader(const Json* value, std::string path, Reading& reading)
    : value_(value), path_(std::move(path)), reading_(&reading) {
    if (!value_ || value_->is_object()) return;
    reading_->fail(path_, wrong_type(*value_, "an object"));
    value_ = nullptr;
}

bool ObjectReader::has(std::string_view key) const {
    return value_ && value_->contains(std::string(key));
}

const Json* ObjectReader::find(std::string_view key) {
    known_.emplace_back(key);
    if (!value_) return nullptr;
    const auto it = value_->find(known_.back());
    return it == value_->end() ? nullptr : &*it;
}

const Json* ObjectReader::required(std::string_view key, std::string_view accepted) {
    const Json* value = find(key);
    if (!value) reading_->miss(path(key), accepted);
    return value;
}

double ObjectReader::checked_number(std::string_view key, const Json& value, Range range) {
    if (!value.is_number()) {
        reading_->fail(path(key), wrong_type(value, "a number"));
        return range.min;
    }
    const double number = value.get<double>();
    if (std::isfinite(number) && number >= range.min && number <= range.max) return number;
    reading_->fail(path(key), out_of_range(number, range));
    return range.min;
}

double ObjectReader::number(std::string_view key, Range range) {
    const Json* value = find(key);
    if (value) return checked_number(key, *value, range);
    reading_->miss(path(key), "a number from " + range_text(range));
    return range.min;
}

double ObjectReader::number(std::string_view key, Range range, double fallback) {
    const Json* value = find(key);
    if (value) return checked_number(key, *value, range);
    reading_->assume(path(key), fallback);
    return fallback;
}

std::optional<double> ObjectReader::optional_number(std::string_view key, Range range) {
    const Json* value = find(key);
    if (!value) return std::nullopt;
    return checked_number(key, *value, range);
}

int ObjectReader::count(std::string_view key, Range range) {
    const double value = number(key, range);
    if (value != std::floor(value)) {
        reading_->fail(path(key), "is " + number_text(value) + "; accepted is a whole number");
    }
    return static_cast<int>(value);
}

int ObjectReader::count(std::string_view key, Range range, int fallback) {
    if (has(key)) return count(key, range);
    find(key);
    reading_->assume(path(key), fallback);
    return fallback;
}

bool ObjectReader::yes_no(std::string_view key, bool fallback) {
    const Json* value = find(key);
    if (!value) {
        reading_->assume(path(key), fallback);
        return fallback;
    }
    if (value->is_boolean()) return value->get<bool>();
    reading_->fail(path(key), wrong_type(*value, "true or false"));
    return fallback;
}

std::string ObjectReader::text(std::string_view key, std::size_t max_bytes, std::string fallback) {
    const Json* value = find(key);
    if (!value) return fallback;
    if (!value->is_string()) {
        reading_->fail(path(key), wrong_type(*value, "a text"));
        return fallback;
    }
    const auto& text = value->get_ref<const std::string&>();
    if (text.size() <= max_bytes) return text;
    reading_->fail(path(key), "is " + std::to_string(text.size()) + " bytes long; accepted are " +
                                  std::to_string(max_bytes));
    return fallback;
}

std::size_t ObjectReader::choice(std::string_view key, std::span<const std::string_view> choices) {
    const Json* value = find(key);
    if (!value) {
        reading_->miss(path(key), listed(choices));
    } else if (!value->is_string()) {
        reading_->fail(path(key), wrong_type(*value, listed(choices)));
    } else {
        const auto it =
            std::find(choices.begin(), choices.end(), value->get_ref<const std::string&>());
        if (it != choices.end()) return static_cast<std::size_t>(it - choices.begin());
        reading_->fail(path(key), "is not among the choices; accepted is " + listed(choices));
    }
    return 0;
}

std::size_t ObjectReader::choice(std::string_view key, std::span<const std::string_view> choices,
                                 std::size_t fallback) {
    if (has(key)) return choice(key, choices);
    find(key);
    reading_->assume(path(key), choices[fallback]);
    return fallback;
}

ObjectReader ObjectReader::object(std::string_view key) {
    return {required(key, "an object"), path(key), *reading_};
}

ObjectReader ObjectReader::object_or_empty(std::string_view key) {
    return {find(key), path(key), *reading_};
}

ArrayReader ObjectReader::array(std::string_view key, std::size_t min_size, std::size_t max_size) {
    const Json* value = required(key, "an array");
    if (value && value->is_array() && (value->size() < min_size || value->size() > max_size)) {
        reading_->fail(path(key), "has " + std::to_string(value->size()) +
                                      " entries; accepted are " + std::to_string(min_size) +
                                      " to " + std::to_string(max_size));
        value = nullptr;
    }
    return {value, path(key), *reading_};
}

ArrayReader ObjectReader::array_or_empty(std::string_view key, std::size_t max_size) {
    if (has(key)) return array(key, 0, max_size);
    return {find(key), path(key), *reading_};
}

std::vector<std::string_view> ObjectReader::keys() const {
    std::vector<std::string_view> keys;
    if (!value_) return keys;
    for (const auto& item : value_->items())
        keys.push_back(item.key());
    return keys;
}

bool ObjectReader::is_known(std::string_view key) const {
    return std::find(known_.begin(), known_.end(), key) != known_.end();
}

std::string ObjectReader::accepted() const {
    std::string text;
    for (auto it = known_.begin(); it != known_.end(); ++it) {
        if (std::find(known_.begin(), it, *it) != it) continue; // asked for twice
        text += (text.empty() ? "" : ", ") + *it;
    }
    return text;
}

void ObjectReader::finish() {
    for (const std::string_view key : keys()) {
        if (!is_known(key)) reading_->unknown({path(key), accepted()});
    }
}

ArrayReader::ArrayReader(const Json* value, std::string path, Reading& reading)
    : value_(value), path_(std::move(path)), reading_(&reading) {
    if (!value_ || value_->is_array()) return;
    reading_->fail(path_, wrong_type(*value_, "an array"));
    value_ = nullptr;
}

ObjectReader ArrayReader::object(std::size_t index) const {
    return {&(*value_)[index], path(index), *reading_};
}

std::vector<double> ArrayReader::numbers(std::size_t index, std::size_t count, Range range) const {
    std::vector<double> result(count, range.min);
    const Json& entry = (*value_)[index];
    if (!entry.is_array() || entry.size() != count) {
        reading_->fail(path(index),
                       wrong_type(entry, std::to_string(count) + " numbers in an array"));
        return result;
    }
    for (std::size_t i = 0; i < count; ++i)
        result[i] = read(entry[i], path_of(path(index), i), range);
    return result;
}

double ArrayReader::number(std::size_t index, Range range) const {
    return read((*value_)[index], path(index), range);
}

double ArrayReader::read(const Json& entry, const std::string& path, Range range) const {
    if (!entry.is_number()) {
        reading_->fail(path, wrong_type(entry, "a number"));
        return range.min;
    }
    const double number = entry.get<double>();
    if (number >= range.min && number <= range.max) return number;
    reading_->fail(path, out_of_range(number, range));
    return range.min;
}

} // namespace shimlight::house
