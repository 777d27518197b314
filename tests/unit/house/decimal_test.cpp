// SPDX-License-Identifier: MIT
#include "house/decimal.hpp"

#include <doctest/doctest.h>

#include <bit>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>

namespace {

using shimlight::house::read_decimal;

/// To the last bit and the same end as the C library's.
void check_same(const std::string& text) {
    char *end = nullptr, *wanted_end = nullptr;
    const double read = read_decimal(text.c_str(), &end);
    const double wanted = std::strtod(text.c_str(), &wanted_end);
    CAPTURE(text);
    REQUIRE(std::bit_cast<std::uint64_t>(read) == std::bit_cast<std::uint64_t>(wanted));
    REQUIRE(end - text.c_str() == wanted_end - text.c_str());
}

std::string printed(const char* format, int digits, double value) {
    char text[1100];
    std::snprintf(text, sizeof text, format, digits, value);
    return text;
}

} // namespace

TEST_CASE("decimal: every double of random bits is read back, in 17 digits and in fewer") {
    std::mt19937_64 random(20260101);
    for (int i = 0; i < 40000; ++i) {
        const double value = std::bit_cast<double>(random());
        if (!(value - value == 0)) continue;
        check_same(printed("%.*e", 16, value));
        check_same(printed("%.*g", 1 + static_cast<int>(random() % 20), value));
    }
}

TEST_CASE("decimal: numbers as people and files write them") {
    std::mt19937_64 random(7);
    for (int i = 0; i < 40000; ++i) {
        const auto whole = static_cast<double>(random() % 100000000);
        check_same(printed("%.*f", static_cast<int>(random() % 9), whole / 9973));
    }
    for (const char* text : {"0",
                             "-0",
                             "1",
                             "+1",
                             " 12",
                             "\t.5",
                             "5.",
                             ".",
                             "",
                             "-",
                             "e5",
                             "1e",
                             "1e+",
                             "1e5",
                             "1E-5x",
                             "1.5.2",
                             "00012.50",
                             "0.000000000000000000000000001",
                             "123456789012345678901234567890",
                             "1e22",
                             "1e23",
                             "9007199254740993",
                             "9007199254740992.5",
                             "1e999",
                             "-1e999",
                             "1e-999",
                             "1e99999999999",
                             "0e99999"})
        check_same(text);
}

TEST_CASE("decimal: halves, the smallest and the largest, exactly and just beside") {
    for (const double value : {5e-324, 2.2250738585072014e-308, 1.7976931348623157e308, 1.0, 0.1,
                               9007199254740992.0, 4.4501477170144023e-308}) {
        const std::uint64_t bits = std::bit_cast<std::uint64_t>(value);
        for (int step = -3; step <= 3; ++step) {
            const double near = std::bit_cast<double>(bits + static_cast<std::uint64_t>(step));
            if (!(near - near == 0)) continue;
            check_same(printed("%.*e", 780, near));
        }
    }
    // Half of the smallest double, below and above, by a digit far behind.
    const std::string half = printed("%.*e", 760, 5e-324);
    check_same("2.4703282292062327208e-324");
    check_same("2.4703282292062328e-324");
    std::string tie = "1.00000000000000011102230246251565404236316680908203125"; // 1 + 2^-53
    check_same(tie);
    check_same(tie + std::string(900, '0') + "1");
    check_same(tie.substr(0, tie.size() - 1) + "4");
    check_same(half.substr(0, 400));
}
