// SPDX-License-Identifier: MIT
#include "app/shelf.hpp"

#include "app/inbox.hpp"
#include "house/house.hpp"
#include "house/json_reader.hpp"

namespace shimlight::app {
namespace {

constexpr std::size_t longest = 1000, most = 10000; ///< web/library.js keeps below

} // namespace

void take_shelf(const char* json) {
    static view::Shelf& shelf = *new view::Shelf; // the first part need not know how to end it
    const auto tree = house::parse_tree(json);
    if (!ok(tree)) return;
    house::Reading reading;
    house::ObjectReader root(&value(tree), "", reading);
    shelf.promise = root.text("promise", longest, "");
    shelf.keeps = root.yes_no("keeps", false);
    shelf.lent = root.yes_no("lent", false);
    const house::ArrayReader houses = root.array("houses", 0, most);
    shelf.houses.clear();
    for (std::size_t i = 0; i < houses.size(); ++i) {
        house::ObjectReader one = houses.object(i);
        shelf.houses.push_back({one.text("id", longest, ""), one.text("name", longest, ""),
                                one.text("words", longest, ""), one.yes_no("trashed", false)});
    }
    inbox().shelf = &shelf;
}

const std::string& fault_of(const char* json) {
    static std::string words;
    const auto opened = house::from_json(json);
    words.clear();
    if (!ok(opened)) words = problem(opened).path + ": " + problem(opened).message;
    return words;
}

} // namespace shimlight::app
