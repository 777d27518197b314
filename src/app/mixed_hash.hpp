// SPDX-License-Identifier: MIT
// Tells whether something is as it was: FNV-1a over whole words, quick and good enough for
// neighbours.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace shimlight::app {

class MixedHash {
  public:
    void word(std::uint64_t value) {
        hash_ = (hash_ ^ value) * 1099511628211ull;
        hash_ ^= hash_ >> 29;
    }
    /// `count` values without holes between their members.
    template <class T> void all(const T* values, std::size_t count) {
        const auto* bytes = reinterpret_cast<const unsigned char*>(values);
        std::size_t left = count * sizeof(T);
        for (; left >= sizeof(std::uint64_t); left -= sizeof(std::uint64_t)) {
            std::uint64_t value = 0;
            std::memcpy(&value, bytes, sizeof value);
            word(value);
            bytes += sizeof value;
        }
        std::uint64_t rest = 0;
        std::memcpy(&rest, bytes, left);
        if (left > 0) word(rest);
    }
    template <class T> void one(const T& value) { all(&value, 1); }
    std::uint64_t value() const { return hash_; }

  private:
    std::uint64_t hash_ = 14695981039346656037ull;
};

} // namespace shimlight::app
