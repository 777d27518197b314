// SPDX-License-Identifier: MIT
// Asks the door spoiled questions and reads spoiled houses: fuzz_door [SECONDS [SEED [FIRST]]].
// Whatever comes in, the answer is JSON, a fault has path and message, and nothing takes long.
// With SHIMLIGHT_LIBFUZZER defined the same check is a libFuzzer target instead.
#include "door/door.hpp"
#include "house/house.hpp"
#include "house/json_tree.hpp"
#include "mutator.hpp"
#include "seeds.hpp"

#include <chrono>
#include <cstdio>
#include <cstdlib>

#ifdef __SANITIZE_ADDRESS__
#include <sanitizer/common_interface_defs.h>
#endif

using namespace shimlight;
using house::Json;

namespace {

using Clock = std::chrono::steady_clock;

#ifdef __SANITIZE_ADDRESS__
constexpr double patience_s = 100; ///< ten times slower under the sanitizers is usual
#else
constexpr double patience_s = 10; ///< longest that an answer may take
#endif
constexpr double usual_seconds = 5;

std::uint64_t current = 0; ///< number of the input that is being asked

double seconds_since(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

/// What is wrong with an answer; nullptr when nothing is.
const char* fault_of(const std::string& answer) {
    const Json tree = Json::parse(answer, nullptr, false);
    if (tree.is_discarded()) return "the answer is not JSON";
    if (!tree.is_object()) return "the answer is no object";
    if (tree.contains("error") != door::is_error(answer)) return "an error is not told as one";
    if (!tree.contains("error")) return nullptr;
    const Json& error = tree["error"];
    if (tree.size() != 1 || !error.is_object()) return "an error has other fields beside it";
    if (!error.contains("path") || !error["path"].is_string()) return "an error has no path";
    if (!error.contains("message") || !error["message"].is_string()) {
        return "an error has no message";
    }
    return error["message"] == "" ? "an error's message is empty" : nullptr;
}

/// A house that was read is written and read again to the same text.
const char* house_fault(std::string_view text) {
    const Result<house::Opened> opened = house::from_json(text);
    if (!ok(opened)) return nullptr;
    if (value(opened).house.openings.empty()) return "a house without openings came in";
    const std::string written = house::to_json(value(opened).house);
    const Result<house::Opened> again = house::from_json(written);
    if (!ok(again)) return "what was written cannot be read";
    if (!value(again).notes.empty() && value(again).house.openings.size() == 1) {
        return "what was written is not clean";
    }
    return house::to_json(value(again).house) == written ? nullptr : "a house changed on its way";
}

const char* check(std::string_view question, std::string_view text) {
    const Clock::time_point start = Clock::now();
    const char* fault = fault_of(door::ask(question, text));
    if (!fault && question == "house") fault = house_fault(text);
    if (!fault && seconds_since(start) > patience_s) fault = "the answer took too long";
    return fault;
}

[[maybe_unused]] void tell_current() {
    std::printf("stopped at input %llu; give it as FIRST to begin there\n",
                static_cast<unsigned long long>(current));
    std::fflush(stdout);
}

/// Input `number` of a seed; the same on every machine.
const char* check_input(std::uint64_t seed, std::uint64_t number) {
    fuzz::Dice dice(seed * 0x100000001b3u + number);
    const fuzz::Seed& good = fuzz::seeds[dice.below(fuzz::seeds.size())];
    const fuzz::Seed& other = fuzz::seeds[dice.below(fuzz::seeds.size())];
    const std::string text = fuzz::Mutator(std::string(good.text), other.text, dice).spoiled();
    const char* fault = check(good.question, text);
    if (fault) {
        std::printf("%s: %.*s\n%s\n", fault, static_cast<int>(good.question.size()),
                    good.question.data(), text.c_str());
    }
    return fault;
}

} // namespace

#ifdef SHIMLIGHT_LIBFUZZER

/// The first byte chooses the question, the rest is its text.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
    const char* fault = check(fuzz::seeds[data[0] % fuzz::seeds.size()].question, text);
    if (!fault) return 0;
    std::puts(fault);
    std::abort();
}

#else

int main(int count, char** arguments) {
    const double seconds = count > 1 ? std::atof(arguments[1]) : usual_seconds;
    const std::uint64_t seed = count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 1;
    const std::uint64_t first = count > 3 ? std::strtoull(arguments[3], nullptr, 10) : 0;
#ifdef __SANITIZE_ADDRESS__
    __sanitizer_set_death_callback(tell_current);
#endif
    const Clock::time_point start = Clock::now();
    std::uint64_t failed = 0;
    for (current = first; seconds_since(start) < seconds; ++current) {
        if (check_input(seed, current)) ++failed;
    }
    const auto asked = static_cast<unsigned long long>(current - first);
    std::printf("%llu spoiled questions: %llu passed, %llu failed\n", asked, asked - failed,
                static_cast<unsigned long long>(failed));
    return failed ? 1 : 0;
}

#endif
