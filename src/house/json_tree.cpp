// SPDX-License-Identifier: MIT
#include "house/json_tree.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace shimlight::house {

namespace {

constexpr int number_too_large = 406; ///< the library's number for that fault

/// Receives the parser's events. Answering false ends the parse.
class TreeBuilder {
  public:
    explicit TreeBuilder(std::string_view text) : text_(text) {}

    bool null() { return add(nullptr); }
    bool boolean(bool value) { return add(value); }
    bool number_integer(Json::number_integer_t value) { return add(value); }
    bool number_unsigned(Json::number_unsigned_t value) { return add(value); }
    bool number_float(double value, const std::string&) { return add(value); }
    bool string(std::string& value) { return add(std::move(value)); }
    bool binary(Json::binary_t&) { return refuse(here(), "is binary; JSON text has none"); }
    bool start_object(std::size_t) { return open(Json::object()); }
    bool end_object() { return close(); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_array() { return close(); }

    bool key(std::string& name) {
        Level& top = levels_.back();
        top.key = std::move(name);
        if (top.value->contains(top.key)) return refuse(here(), "is there twice in one object");
        if (top.value->size() >= max_keys) {
            return refuse(here(),
                          "is one field too many; accepted are " + std::to_string(max_keys));
        }
        return true;
    }

    bool parse_error(std::size_t position, const std::string&,
                     const nlohmann::detail::exception& fault) {
        if (fault.id == number_too_large) {
            return refuse(here(), "is a number too large to compute with");
        }
        return refuse("", "not valid JSON at " + place(position));
    }

    Result<Json> result() && {
        if (problem_) return std::move(*problem_);
        return std::move(root_);
    }

  private:
    struct Level {
        Json* value;
        std::string key; ///< of the value that comes next, when this is an object
    };

    template <class Value> Json* attach(Value&& value) {
        if (levels_.empty()) return &(root_ = std::forward<Value>(value));
        Level& top = levels_.back();
        if (top.value->is_array()) {
            return &top.value->emplace_back(std::forward<Value>(value));
        }
        return &(*top.value)[top.key].operator=(Json(std::forward<Value>(value)));
    }

    template <class Value> bool add(Value&& value) {
        attach(std::forward<Value>(value));
        return true;
    }

    bool open(Json&& empty) {
        if (levels_.size() >= max_nesting) {
            return refuse(here(), "is nested too deep; accepted are " +
                                      std::to_string(max_nesting) + " levels");
        }
        levels_.push_back({attach(std::move(empty)), {}});
        return true;
    }

    bool close() {
        levels_.pop_back();
        return true;
    }

    /// JSON pointer of the value that comes next.
    std::string here() const {
        std::string path;
        for (const Level& level : levels_) {
            path =
                level.value->is_array() ? path_of(path, index_in(level)) : path_of(path, level.key);
        }
        return path;
    }

    /// Within an array that is not the innermost, the open value is its last.
    std::size_t index_in(const Level& level) const {
        const bool innermost = &level == &levels_.back();
        return level.value->size() - (innermost ? 0 : 1);
    }

    std::string place(std::size_t position) const {
        const std::string_view before = text_.substr(0, position > 0 ? position - 1 : 0);
        const auto line = 1 + std::count(before.begin(), before.end(), '\n');
        const std::size_t start = before.rfind('\n');
        const std::size_t column =
            before.size() - (start == std::string_view::npos ? 0 : start + 1) + 1;
        return "line " + std::to_string(line) + ", column " + std::to_string(column);
    }

    bool refuse(std::string path, std::string message) {
        problem_ = Problem{std::move(path), std::move(message)};
        return false;
    }

    std::string_view text_;
    Json root_;
    std::vector<Level> levels_;
    std::optional<Problem> problem_;
};

} // namespace

Result<Json> parse_tree(std::string_view text) {
    if (text.size() > max_text_bytes) {
        return Problem{"",
                       "is too long; accepted are " + std::to_string(max_text_bytes) + " bytes"};
    }
    TreeBuilder builder(text);
    Json::sax_parse(text.begin(), text.end(), &builder);
    return std::move(builder).result();
}

std::string path_of(std::string_view path, std::string_view key) {
    std::string result(path);
    result += '/';
    for (const char c : key) {
        if (c == '~') {
            result += "~0";
        } else if (c == '/') {
            result += "~1";
        } else {
            result += c;
        }
    }
    return result;
}

std::string path_of(std::string_view path, std::size_t index) {
    return std::string(path) + '/' + std::to_string(index);
}

std::string write_line(const Json& tree) {
    return tree.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string write_pages(const Json& tree) {
    return tree.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

} // namespace shimlight::house
