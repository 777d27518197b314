// SPDX-License-Identifier: MIT
// On the web the program comes in two parts: the first draws the cut, the rest comes once somebody
// begins to use the page (web/setup/split.py, which lists what it begins with).
#pragma once

/// Kept apart from its caller, so that it can come with the rest. Called only when
/// Platform::whole says that the rest is here.
#define SHIMLIGHT_REST [[gnu::noinline]]
