// SPDX-License-Identifier: MIT
// A picture of a screen without a browser:
//   view_picture OUT.png WIDTH HEIGHT light|dark [DO…]
// DO is the id of a mirror node to press, id=number to set a lever, id="words" to type,
// tap:X,Y for a finger; --nodes prints what the mirror has at the end, --house FILE opens one,
// --shelf puts invented houses beside it, --report=PREFIX keeps a report's pictures and prints what
// it says.
#include "stage/stage.hpp"

#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iostream>
#include <sstream>

using namespace shimlight;

namespace {

house::House house_of(int count, char** words) {
    for (int i = 5; i + 1 < count; ++i)
        if (!std::strcmp(words[i], "--house")) {
            std::ifstream file(words[i + 1]);
            std::stringstream content;
            content << file.rdbuf();
            const auto opened = house::from_json(content.str());
            if (ok(opened)) return value(opened).house;
            std::cerr << problem(opened).path << ": " << problem(opened).message << '\n';
            std::exit(1);
        }
    return house::demo_house();
}

view::Shelf some_houses() {
    return {{{"a", "Harbour Lane 4", "Rivermouth · 2 openings · saved Nov 28", false},
             {"b", "The old schoolhouse at the end of Upper Meadow Road, east wing and annexe",
              "A place with quite a long name · 14 openings · saved Nov 3", false},
             {"c", "Mill Row 12", "Rivermouth · 1 opening · deleted 9:38", true},
             {"d", "Station Street 77, ground floor left, of the second house in the yard",
              "3 openings · deleted Nov 20", true}},
            "The browser has not promised to keep them: it may clear them away when the device "
            "runs out of room, or after weeks without a visit. Save them to a file now and then.",
            true,
            false};
}

void print(const view::MirrorNode& n) {
    std::cout << n.group << " | " << n.id << " | " << n.name << " | " << n.value << " | "
              << n.rect.x << ' ' << n.rect.y << ' ' << n.rect.w << ' ' << n.rect.h
              << (n.reachable ? "" : " (out of sight)") << '\n';
}

void print(const view::Block& b) {
    std::cout << static_cast<int>(b.kind) << ' ' << b.level << " | " << b.words << " | " << b.manner
              << " | " << b.told << '\n';
    for (const view::Block::Row& row : b.rows) {
        for (const std::string& cell : row)
            std::cout << "    " << cell;
        std::cout << '\n';
    }
}

void act(stage::Stage& stage, const std::string& what) {
    float x = 0, y = 0;
    if (std::sscanf(what.c_str(), "tap:%f,%f", &x, &y) == 2) return stage.tap({x, y});
    const auto at = what.find('=');
    if (at == std::string::npos) {
        if (!stage.node(what)) std::cerr << "no node " << what << '\n';
        return stage.press(what);
    }
    const std::string id = what.substr(0, at), content = what.substr(at + 1);
    char* end = nullptr;
    const double number = std::strtod(content.c_str(), &end);
    if (!content.empty() && *end == 0)
        stage.set_number(id, number);
    else
        stage.type(id, content);
}

} // namespace

int main(int count, char** words) {
    if (count < 5) {
        std::cerr << "view_picture OUT.png WIDTH HEIGHT light|dark [DO…] [--nodes] [--house F]\n";
        return 1;
    }
    stage::Size size;
    size.width_px = std::strtof(words[2], nullptr);
    size.height_px = std::strtof(words[3], nullptr);
    size.dark = !std::strcmp(words[4], "dark");
    for (int i = 5; i < count; ++i)
        if (std::sscanf(words[i], "--text=%d", &size.text) == 1) break;
    stage::Stage stage(size, house_of(count, words));
    for (int i = 5; i < count; ++i) {
        if (!std::strncmp(words[i], "--report=", 9)) stage.keep_report = words[i] + 9;
        if (!std::strcmp(words[i], "--shelf")) stage.shelf = some_houses();
    }
    if (!stage.rest()) std::cerr << "never at rest\n";
    bool nodes = false;
    for (int i = 5; i < count; ++i) {
        if (!std::strcmp(words[i], "--house"))
            ++i;
        else if (!std::strncmp(words[i], "--text=", 7) || !std::strncmp(words[i], "--report=", 9) ||
                 !std::strcmp(words[i], "--shelf"))
            continue;
        else if (!std::strcmp(words[i], "--nodes"))
            nodes = true;
        else
            act(stage, words[i]);
    }
    if (nodes)
        for (const auto& n : stage.mirror().nodes())
            print(n);
    for (const view::Block& block : stage.report())
        print(block);
    return stage::write_png(stage.picture(), words[1]) ? 0 : 1;
}
