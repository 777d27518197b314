// SPDX-License-Identifier: MIT
// Reads a JSON tree field by field, checks type and range, and remembers the first fault with its
// path. After a fault reading goes on with harmless values, so that callers need no branches.
#pragma once

#include "house/json_tree.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace shimlight::house {

/// Accepted numbers, both ends included.
struct Range {
    double min = 0, max = 0;
};

/// A field that nobody asked for, and what could have stood there.
struct UnknownField {
    std::string path;
    std::string accepted; ///< "air_c, rh, met"
};

/// What reading has found so far, shared by all readers of one tree.
class Reading {
  public:
    void fail(std::string path, std::string message); ///< the first fault counts
    /// A required field is not there; `accepted` is what could be.
    void miss(std::string path, std::string_view accepted);
    void assume(const std::string& path, Json value); ///< a default was used
    void unknown(UnknownField field);

    /// The fault, if any; a missing field is told only when nothing else is wrong.
    std::optional<Problem> problem() const;
    const Json& assumed() const { return assumed_; } ///< {path: default, …}
    const std::vector<UnknownField>& unknown_fields() const { return unknown_; }

  private:
    std::optional<Problem> fault_, missing_;
    Json assumed_ = Json::object();
    std::vector<UnknownField> unknown_;
};

class ArrayReader;

/// One object. Every key that is asked for counts as known.
class ObjectReader {
  public:
    /// Fails when `value` is no object. A null pointer reads as an empty object.
    ObjectReader(const Json* value, std::string path, Reading& reading);

    bool has(std::string_view key) const;
    std::string path(std::string_view key) const { return path_of(path_, key); }
    Reading& reading() const { return *reading_; }

    double number(std::string_view key, Range range);                  ///< required
    double number(std::string_view key, Range range, double fallback); ///< assumed when missing
    std::optional<double> optional_number(std::string_view key, Range range);
    int count(std::string_view key, Range range);
    int count(std::string_view key, Range range, int fallback);
    bool yes_no(std::string_view key, bool fallback);
    std::string text(std::string_view key, std::size_t max_bytes, std::string fallback);
    /// Index of the text among `choices`; 0 after a fault.
    std::size_t choice(std::string_view key, std::span<const std::string_view> choices);
    std::size_t choice(std::string_view key, std::span<const std::string_view> choices,
                       std::size_t fallback);
    ObjectReader object(std::string_view key);          ///< required
    ObjectReader object_or_empty(std::string_view key); ///< reads as {} when missing
    ArrayReader array(std::string_view key, std::size_t min_size, std::size_t max_size);
    ArrayReader array_or_empty(std::string_view key, std::size_t max_size);

    /// The value itself, known from now on; nullptr when missing.
    const Json* find(std::string_view key);
    /// All keys, in the order of the text.
    std::vector<std::string_view> keys() const;
    /// Reports every key that was never asked for.
    void finish();

  private:
    double checked_number(std::string_view key, const Json& value, Range range);
    bool is_known(std::string_view key) const;
    std::string accepted() const;
    const Json* required(std::string_view key, std::string_view accepted);

    const Json* value_;
    std::string path_;
    Reading* reading_;
    std::vector<std::string> known_;
};

/// One array.
class ArrayReader {
  public:
    ArrayReader(const Json* value, std::string path, Reading& reading);

    std::size_t size() const { return value_ ? value_->size() : 0; }
    ObjectReader object(std::size_t index) const;
    /// The numbers of element `index`, which must be an array of `count` of them.
    std::vector<double> numbers(std::size_t index, std::size_t count, Range range) const;
    double number(std::size_t index, Range range) const;
    std::string path(std::size_t index) const { return path_of(path_, index); }

  private:
    double read(const Json& entry, const std::string& path, Range range) const;

    const Json* value_;
    std::string path_;
    Reading* reading_;
};

/// "0.05": a number as it is told in a message.
std::string number_text(double value);

/// "0.001 to 0.1"
std::string range_text(Range range);

/// "is 5; accepted is 0.001 to 0.1"
std::string out_of_range(double value, Range range);

} // namespace shimlight::house
