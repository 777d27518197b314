// SPDX-License-Identifier: MIT
#include "house/field_reader.hpp"

#include "house/house_json.hpp"

#include <cmath>
#include <utility>
#include <vector>

namespace shimlight::house {

using opening::Field;
using opening::Quantity;

namespace {

std::optional<double> read_choice(const Field& field, const Json& value, const std::string& path,
                                  Reading& reading) {
    std::string accepted;
    for (std::size_t i = 0; i < field.choices.size(); ++i) {
        const std::string key(field.choices[i].key);
        if (value.is_string() && value.get_ref<const std::string&>() == key) {
            return static_cast<double>(i);
        }
        accepted += (i > 0 ? ", \"" : "\"") + key + '"';
    }
    reading.fail(path, "is not among the choices; accepted is one of " + accepted);
    return std::nullopt;
}

std::optional<double> read_yes_no(const Json& value, const std::string& path, Reading& reading) {
    if (value.is_boolean()) return value.get<bool>() ? 1.0 : 0.0;
    reading.fail(path,
                 std::string("is of type ") + value.type_name() + "; accepted is true or false");
    return std::nullopt;
}

std::optional<double> read_number(const Field& field, const Json& value, const std::string& path,
                                  Reading& reading) {
    if (!value.is_number()) {
        reading.fail(path,
                     std::string("is of type ") + value.type_name() + "; accepted is a number");
        return std::nullopt;
    }
    const double number = value.get<double>();
    const bool whole = field.quantity != Quantity::count || number == std::floor(number);
    if (whole && number >= field.min && number <= field.max) return number;
    reading.fail(path,
                 whole ? out_of_range(number, {field.min, field.max}) : "is not a whole number");
    return std::nullopt;
}

/// The objects below one object, each made once, so that unknown fields can be told.
class Groups {
  public:
    explicit Groups(ObjectReader root) { readers_.emplace_back("", std::move(root)); }

    ObjectReader& at(std::string_view prefix) {
        for (auto& [name, reader] : readers_) {
            if (name == prefix) return reader;
        }
        ObjectReader group = readers_.front().second.object_or_empty(prefix);
        return readers_.emplace_back(prefix, std::move(group)).second;
    }

    void finish() {
        for (auto& [name, reader] : readers_)
            reader.finish();
    }

  private:
    std::vector<std::pair<std::string_view, ObjectReader>> readers_;
};

} // namespace

std::optional<double> read_field_value(const Field& field, const Json& value,
                                       const std::string& path, Reading& reading) {
    switch (field.quantity) {
    case Quantity::choice:
        return read_choice(field, value, path, reading);
    case Quantity::yes_no:
        return read_yes_no(value, path, reading);
    default:
        return read_number(field, value, path, reading);
    }
}

void read_scope(ObjectReader object, opening::Scope scope, opening::Case& c) {
    Groups groups(std::move(object));
    for (const Field& field : opening::fields()) {
        if (field.scope != scope) continue;
        const std::string_view key = local_key(field);
        const std::size_t dot = key.find('.');
        const bool nested = dot != std::string_view::npos;
        ObjectReader& group = groups.at(nested ? key.substr(0, dot) : "");
        const std::string_view name = nested ? key.substr(dot + 1) : key;
        const Json* value = group.find(name);
        if (!value) continue;
        const auto number = read_field_value(field, *value, group.path(name), group.reading());
        if (number) field.set(c, *number);
    }
    groups.finish();
}

std::vector<std::string_view> make_consistent(opening::Case& c) {
    const opening::Case before = c;
    for (const Field& field : opening::fields()) {
        opening::set_field(c, field, field.get(before));
    }
    std::vector<std::string_view> changed;
    for (const Field& field : opening::fields()) {
        if (field.get(c) != field.get(before)) changed.push_back(field.key);
    }
    return changed;
}

std::vector<assess::TestAnswer> read_answers(ObjectReader object) {
    std::vector<assess::TestAnswer> answers;
    const auto rows = assess::test_rows();
    for (std::size_t test = 0; test < rows.size(); ++test) {
        const std::size_t count = rows[test].scale == assess::Scale::two ? 2 : 3;
        const std::span choices(rows[test].answers.data(), count);
        if (object.has(rows[test].key))
            answers.push_back({test, object.choice(rows[test].key, choices)});
        else
            object.find(rows[test].key);
    }
    object.finish();
    return answers;
}

} // namespace shimlight::house
