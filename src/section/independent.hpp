// SPDX-License-Identifier: MIT
// Says of the loop that follows that no pass writes what another reads or writes. Compilers cannot
// see that the even and the odd columns of a row lie apart, and would fall back on single numbers.
#pragma once

#if defined(__wasm__) && !defined(__wasm_simd128__)
#define SHIMLIGHT_INDEPENDENT
#elif defined(__clang__)
#define SHIMLIGHT_INDEPENDENT _Pragma("clang loop vectorize(assume_safety)")
#elif defined(__GNUC__)
#define SHIMLIGHT_INDEPENDENT _Pragma("GCC ivdep")
#else
#define SHIMLIGHT_INDEPENDENT
#endif
