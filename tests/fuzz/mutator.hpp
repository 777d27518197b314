// SPDX-License-Identifier: MIT
// Spoils JSON texts, the same way for the same seed.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace shimlight::fuzz {

/// A 64-bit shift-multiply generator (splitmix64).
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        std::uint64_t z = state_ += 0x9e3779b97f4a7c15u;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
        return z ^ (z >> 31);
    }
    /// 0…count - 1; 0 when there is nothing to choose from.
    std::size_t below(std::size_t count) { return count ? next() % count : 0; }

  private:
    std::uint64_t state_;
};

/// What broken programs, typing hands and bad minds put into JSON.
inline constexpr std::array<std::string_view, 40> oddities{"null",
                                                           "true",
                                                           "{}",
                                                           "[]",
                                                           "\"\"",
                                                           "0",
                                                           "-0",
                                                           "-1",
                                                           "1e999",
                                                           "-1e999",
                                                           "1e308",
                                                           "5e-324",
                                                           "1e-9",
                                                           "0.5",
                                                           "3",
                                                           "99999999999999999999",
                                                           "NaN",
                                                           "Infinity",
                                                           "\"inside\"",
                                                           "\"a/b~c\"",
                                                           "\"\\u0000\"",
                                                           "\"\\ud800\"",
                                                           "\xff",
                                                           "\xc3",
                                                           "\xef\xbb\xbf",
                                                           "//",
                                                           "{\"a\":",
                                                           "[[[[[[[[[[",
                                                           ",",
                                                           ":",
                                                           "}",
                                                           "]",
                                                           "\"",
                                                           "\\",
                                                           "\"x\":1,",
                                                           "\"air_c\":20,",
                                                           "[0,0]",
                                                           "{\"air_c\":20}",
                                                           "\"fine\"",
                                                           "\n"};

inline constexpr std::size_t longest_run = 60; ///< bytes cut out, doubled or crossed at once

class Mutator {
  public:
    Mutator(std::string text, std::string_view other, Dice& dice)
        : text_(std::move(text)), other_(other), dice_(dice) {}

    std::string spoiled() {
        for (std::size_t i = 1 + dice_.below(4); i > 0; --i)
            spoil_once();
        return std::move(text_);
    }

  private:
    void spoil_once() {
        switch (dice_.below(8)) {
        case 0:
            flip_bit();
            break;
        case 1:
            text_.erase(place(), dice_.below(longest_run));
            break;
        case 2:
            text_.insert(place(), run_of(text_));
            break;
        case 3:
            text_.insert(place(), oddities[dice_.below(oddities.size())]);
            break;
        case 4:
            text_.insert(place(), run_of(other_));
            break;
        case 5:
            text_.resize(place());
            break;
        default:
            replace_value();
            break; // the most likely to get past the parser
        }
    }

    std::size_t place() { return dice_.below(text_.size() + 1); }

    std::string run_of(std::string_view from) {
        return std::string(from.substr(dice_.below(from.size() + 1), dice_.below(longest_run)));
    }

    void flip_bit() {
        if (text_.empty()) return;
        text_[dice_.below(text_.size())] ^= static_cast<char>(1u << dice_.below(8));
    }

    /// Replaces what stands between a ":", "," or "[" and the next end of a value.
    void replace_value() {
        const std::size_t start = text_.find_first_of(":,[", place());
        if (start == std::string::npos) return;
        const std::size_t end = std::min(text_.find_first_of(",]}", start + 1), text_.size());
        text_.replace(start + 1, end - start - 1, oddities[dice_.below(oddities.size())]);
    }

    std::string text_;
    std::string_view other_;
    Dice& dice_;
};

} // namespace shimlight::fuzz
