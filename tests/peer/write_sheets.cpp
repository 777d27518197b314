// SPDX-License-Identifier: MIT
// Houses with random sizes and hostile texts, each as its file and as its table, for another
// reader: write_sheets FOLDER COUNT leaves 0.json, 0.csv, 1.json, … there.
#include "house/sheet.hpp"
#include "unit/physics/draw.hpp"

#include <cstdio>
#include <cstdlib>
#include <fstream>

namespace {

using namespace shimlight;

const char* const parts[] = {"=",
                             "+",
                             "-",
                             "@",
                             "\"",
                             "\"\"",
                             "'",
                             ",",
                             ";",
                             "\t",
                             "\r",
                             "\n",
                             "\r\n",
                             " ",
                             "|",
                             "a",
                             "1",
                             "/",
                             "ü",
                             "\xEF\xBC\x9D",
                             "\xEF\xBC\x8B",
                             "\xEF\xBC\x8D",
                             "\xEF\xBC\xA0",
                             "\xC2\xA0",
                             "\xE3\x80\x80",
                             "\xE2\x80\x8B",
                             "\xEF\xBB\xBF",
                             "north",
                             "SUM(A1)",
                             "cmd|' /C x'!A0"};

std::string hostile(physics::Draw& draw) {
    std::string text;
    for (int n = draw.whole(0, 14); n > 0; --n)
        text += parts[draw.whole(0, static_cast<int>(std::size(parts)) - 1)];
    return text;
}

void fill(physics::Draw& draw, house::House& house, house::OpeningRecord& record) {
    record.name = hostile(draw);
    record.complaint = hostile(draw);
    record.today.width_m = draw.between(0.5, 1.4);
    record.today.height_m = draw.between(0.8, 2.0);
    const auto ready = opening::ready_remedies();
    const int which = draw.whole(0, static_cast<int>(ready.size()) - 1);
    record.remedies = {opening::make_remedy(ready[static_cast<std::size_t>(which)].key,
                                            house::today_case(house, record))};
    record.remedies[0].name = hostile(draw);
    record.chosen = draw.whole(-1, 0);
    for (std::size_t i = 0; i < house::entry_count; ++i) {
        const house::EntryRow& row = house::entry_rows()[i];
        if (draw.whole(0, 1))
            record.site.set(static_cast<house::Entry>(i), draw.between(row.min, row.max));
    }
}

} // namespace

int main(int count, char** words) {
    if (count != 3) return std::fputs("write_sheets FOLDER COUNT\n", stderr), 2;
    physics::Draw draw(20);
    for (int i = 0; i < std::atoi(words[2]); ++i) {
        house::House house = house::demo_house();
        house.name = hostile(draw);
        house.currency = "¤";
        house.openings.resize(static_cast<std::size_t>(draw.whole(1, 3)));
        house.selected = 0;
        for (house::OpeningRecord& record : house.openings)
            fill(draw, house, record);
        const std::string name = std::string(words[1]) + "/" + std::to_string(i);
        std::ofstream(name + ".json") << house::to_json(house);
        std::ofstream(name + ".csv", std::ios::binary) << house::sheet_csv(
            house, i % 2 ? house::Separator::semicolon : house::Separator::comma);
    }
}
