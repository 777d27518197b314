// SPDX-License-Identifier: MIT
#include "memory.hpp"

#include <algorithm>
#include <cstdlib>
#include <malloc.h>
#include <new>

namespace {

std::size_t held = 0, peak = 0;

} // namespace

void* operator new(std::size_t size) {
    void* const memory = std::malloc(size);
    if (!memory) std::abort();
    held += malloc_usable_size(memory);
    peak = std::max(peak, held);
    return memory;
}

void operator delete(void* memory) noexcept {
    if (memory) held -= malloc_usable_size(memory);
    std::free(memory);
}

void operator delete(void* memory, std::size_t) noexcept {
    operator delete(memory);
}

namespace shimlight::bench {

void forget_peak() {
    peak = held;
}
std::size_t peak_bytes() {
    return peak;
}
std::size_t held_bytes() {
    return held;
}

} // namespace shimlight::bench
