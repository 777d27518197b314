// SPDX-License-Identifier: MIT
#include "house/decimal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>

namespace shimlight::house {
namespace {

constexpr int most_digits = 800; // more cannot move the result but by being there (768 suffice)
constexpr int exact_power = 22;  // 10^22 is a double
constexpr int largest_power = 310, smallest_power = -345; // of the first digit: infinite, nought
constexpr int far = 100000;                               // an exponent beyond all use
constexpr int quotient_bits = 63;                         // or one less
constexpr std::uint64_t exact_whole = std::uint64_t{1} << 53;

/// A whole number of up to some 1,300 decimal digits.
class Whole {
  public:
    explicit Whole(std::uint32_t value) { words_[0] = value, used_ = value ? 1 : 0; }

    void multiply_add(std::uint32_t factor, std::uint32_t more) {
        std::uint64_t carry = more;
        for (int i = 0; i < used_; ++i) {
            carry += std::uint64_t{words_[i]} * factor;
            words_[i] = static_cast<std::uint32_t>(carry);
            carry >>= 32;
        }
        if (carry) words_[used_++] = static_cast<std::uint32_t>(carry);
    }

    int bits() const {
        int count = 32 * used_;
        for (std::uint32_t top = used_ ? words_[used_ - 1] : 0; top && !(top >> 31); top <<= 1)
            --count;
        return count;
    }

    void shift_left(int count) {
        for (; count >= 16; count -= 16)
            multiply_add(1u << 16, 0);
        multiply_add(1u << count, 0);
    }

    bool less_than(const Whole& other) const {
        if (used_ != other.used_) return used_ < other.used_;
        for (int i = used_ - 1; i >= 0; --i)
            if (words_[i] != other.words_[i]) return words_[i] < other.words_[i];
        return false;
    }

    /// `other` is not larger.
    void subtract(const Whole& other) {
        std::int64_t borrow = 0;
        for (int i = 0; i < used_; ++i) {
            borrow += std::int64_t{words_[i]} - other.words_[i];
            words_[i] = static_cast<std::uint32_t>(borrow);
            borrow >>= 32;
        }
        while (used_ > 0 && words_[used_ - 1] == 0)
            --used_;
    }

    bool nought() const { return used_ == 0; }

  private:
    std::array<std::uint32_t, 136> words_{};
    int used_ = 0;
};

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

/// What stands in a text: its digits, the first of which is not 0, and the power of the last.
struct Digits {
    std::array<char, most_digits + 1> of;
    int count = 0;
    int power = 0;
    bool any = false;

    void take(char digit, bool fraction) {
        any = true;
        if (fraction) --power;
        if (count == 0 && digit == '0') return;
        if (count < most_digits) {
            of[count++] = digit;
            return;
        }
        ++power;
        if (digit != '0' && count == most_digits) {
            of[count++] = '1'; // something follows
            --power;
        }
    }
};

const char* read_digits(const char* at, Digits& digits) {
    for (; is_digit(*at); ++at)
        digits.take(*at, false);
    if (*at != '.') return at;
    const char* const point = at++;
    const bool before = digits.any;
    for (; is_digit(*at); ++at)
        digits.take(*at, true);
    return digits.any || before ? at : point;
}

const char* read_exponent(const char* at, int& power) {
    if (*at != 'e' && *at != 'E') return at;
    const char* digit = at + 1;
    const bool negative = *digit == '-';
    if (*digit == '-' || *digit == '+') ++digit;
    if (!is_digit(*digit)) return at;
    int told = 0;
    for (; is_digit(*digit); ++digit)
        told = std::min(told * 10 + (*digit - '0'), far);
    power += negative ? -told : told;
    return digit;
}

/// q·2^k, and whether something is left below q, as the nearest double.
double rounded(std::uint64_t q, int k, bool more) {
    int length = 64;
    while (!(q >> (length - 1)))
        --length;
    const int top = length - 1 + k;
    const int kept = std::min(53, 53 + 1022 + top);
    if (kept < 0) return 0;
    const int dropped = length - kept;
    const std::uint64_t whole = dropped < 64 ? q >> dropped : 0;
    const std::uint64_t half = std::uint64_t{1} << (dropped - 1);
    const std::uint64_t rest = dropped < 64 ? q & (half * 2 - 1) : q;
    const bool up = rest > half || (rest == half && (more || (whole & 1)));
    return std::ldexp(static_cast<double>(whole + up), k + dropped);
}

/// By long division of whole numbers, as far as a double tells.
double divided(const Digits& digits) {
    Whole above(0), below(1);
    for (int i = 0; i < digits.count; ++i) {
        if (above.nought())
            above = Whole(static_cast<std::uint32_t>(digits.of[i] - '0'));
        else
            above.multiply_add(10, static_cast<std::uint32_t>(digits.of[i] - '0'));
    }
    for (int i = 0; i < std::abs(digits.power); ++i)
        (digits.power < 0 ? below : above).multiply_add(10, 0);
    const int shift = quotient_bits - (above.bits() - below.bits());
    (shift > 0 ? above : below).shift_left(std::abs(shift));
    below.shift_left(quotient_bits);
    std::uint64_t q = 0;
    for (int i = 0; i <= quotient_bits; ++i) {
        q <<= 1;
        if (!above.less_than(below)) {
            above.subtract(below);
            q |= 1;
        }
        above.shift_left(1);
    }
    return rounded(q, -shift, !above.nought());
}

double value_of(const Digits& digits) {
    if (digits.count == 0 || digits.count + digits.power < smallest_power + 1) return 0;
    if (digits.count + digits.power > largest_power) return std::numeric_limits<double>::infinity();
    std::uint64_t whole = 0;
    if (digits.count <= 16)
        for (int i = 0; i < digits.count; ++i)
            whole = whole * 10 + static_cast<std::uint64_t>(digits.of[i] - '0');
    if (digits.count > 16 || whole > exact_whole || std::abs(digits.power) > exact_power)
        return divided(digits);
    double power = 1; // both exact: rounded once
    for (int i = 0; i < std::abs(digits.power); ++i)
        power *= 10;
    const auto exact = static_cast<double>(whole);
    return digits.power < 0 ? exact / power : exact * power;
}

} // namespace

double read_decimal(const char* text, char** end) {
    const char* at = text;
    while (*at == ' ' || (*at >= '\t' && *at <= '\r'))
        ++at;
    const bool negative = *at == '-';
    if (*at == '-' || *at == '+') ++at;
    Digits digits;
    at = read_digits(at, digits);
    if (digits.any) at = read_exponent(at, digits.power);
    if (end) *end = const_cast<char*>(digits.any ? at : text);
    const double value = value_of(digits);
    return negative && digits.any ? -value : value;
}

} // namespace shimlight::house
