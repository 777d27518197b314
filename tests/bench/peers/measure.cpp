// SPDX-License-Identifier: MIT
#include "peers.hpp"

#include <ctime>
#include <malloc.h>

namespace shimlight::bench {

double processor_ms() {
    return 1000.0 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double allocated_bytes() {
    const struct mallinfo2 info = mallinfo2();
    return static_cast<double>(info.uordblks) + static_cast<double>(info.hblkhd);
}

} // namespace shimlight::bench
