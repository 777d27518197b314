// SPDX-License-Identifier: MIT
// Published sections and a short way to paint them.
#pragma once

#include "section/field.hpp"

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace shimlight::section::reference {

/// Paints rectangles given in millimetres over an origin.
struct Painter {
    Painting painting;
    Point origin_mm{};

    Painter(double width_mm, double height_mm) {
        painting.width_m = width_mm / 1000;
        painting.height_m = height_mm / 1000;
    }
    int film(const char* name, double c, double film_w_m2k) {
        painting.airs.push_back({name, c, film_w_m2k, false});
        return static_cast<int>(painting.airs.size()) - 1;
    }
    int surface(const char* name, double c) {
        painting.airs.push_back({name, c, 0, true});
        return static_cast<int>(painting.airs.size()) - 1;
    }
    template <class Fill> void fill(double x0, double y0, double x1, double y1, Fill what) {
        painting.regions.push_back({{(x0 - origin_mm.x_m) / 1000, (y0 - origin_mm.y_m) / 1000,
                                     (x1 - origin_mm.x_m) / 1000, (y1 - origin_mm.y_m) / 1000},
                                    what});
    }
    void edge(Side side, double from_mm, double to_mm, int air) {
        painting.edges.push_back({side, from_mm / 1000, to_mm / 1000, air});
    }
};

inline Field solved(const Painting& painting, Accuracy accuracy) {
    Result<Field> result = solve(painting, accuracy);
    return ok(result) ? value(result) : Field{};
}

/// Rows of a CSV file beside the tests, without its heading.
inline std::vector<std::vector<std::string>> read_csv(const std::string& name) {
    std::ifstream file(std::string(SHIMLIGHT_REFERENCE_DIR) + "/section/" + name);
    std::vector<std::vector<std::string>> rows;
    std::string line;
    std::getline(file, line);
    while (std::getline(file, line)) {
        std::istringstream cells(line);
        std::vector<std::string> row;
        for (std::string cell; std::getline(cells, cell, ',');)
            row.push_back(cell);
        rows.push_back(row);
    }
    return rows;
}

inline double number(const std::string& text) {
    return std::strtod(text.c_str(), nullptr);
}

} // namespace shimlight::section::reference
