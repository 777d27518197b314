// SPDX-License-Identifier: MIT
#include "app/shelf.hpp"

#include "app/inbox.hpp"
#include "house/house.hpp"

namespace shimlight::app {

void begin_shelf(const char* promise, bool keeps, bool lent) {
    inbox().shelf = {{}, promise, keeps, lent};
}

void put_on_shelf(const char* id, const char* name, const char* words, bool trashed) {
    inbox().shelf.houses.push_back({id, name, words, trashed});
}

const std::string& fault_of(const char* json) {
    static std::string words;
    const auto opened = house::from_json(json);
    words.clear();
    if (!ok(opened)) words = problem(opened).path + ": " + problem(opened).message;
    return words;
}

} // namespace shimlight::app
