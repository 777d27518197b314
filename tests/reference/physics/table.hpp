// SPDX-License-Identifier: MIT
// Published values beside this file: a comma-separated table whose first line names the columns.
#pragma once

#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace shimlight::reference {

class Row {
  public:
    Row(const std::vector<std::string>& names, const std::vector<std::string>& cells) {
        if (names.size() != cells.size()) throw std::runtime_error("row of another length");
        for (std::size_t i = 0; i < names.size(); ++i)
            cell_[names[i]] = cells[i];
    }
    const std::string& text(const std::string& name) const { return cell_.at(name); }
    double number(const std::string& name) const { return std::stod(text(name)); }

  private:
    std::map<std::string, std::string> cell_;
};

inline std::vector<std::string> split(const std::string& line, char at) {
    std::vector<std::string> parts(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"')
            quoted = !quoted;
        else if (c == at && !quoted)
            parts.emplace_back();
        else
            parts.back() += c;
    }
    return parts;
}

/// Rows of tests/reference/physics/`file`; an unreadable or empty one fails the test by throwing.
inline std::vector<Row> table(const std::string& file) {
    std::ifstream in(std::string(SHIMLIGHT_REFERENCE_DIR) + "/physics/" + file);
    std::string line;
    if (!std::getline(in, line)) throw std::runtime_error("no table " + file);
    const std::vector<std::string> names = split(line, ',');
    std::vector<Row> rows;
    while (std::getline(in, line))
        rows.emplace_back(names, split(line, ','));
    if (rows.empty()) throw std::runtime_error("no rows in " + file);
    return rows;
}

} // namespace shimlight::reference
