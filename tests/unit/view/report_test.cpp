// SPDX-License-Identifier: MIT
// The report by its blocks: the strings of the screens, a sheet for every opening, cautions with
// their rules, descriptions of its pictures; and the screen as it was when it is done.
#include "house/cautions.hpp"
#include "house/sheet.hpp"
#include "screens.hpp"
#include "view/report.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace shimlight;
using screens::value_of;
using view::Block;

namespace {

/// Thin spaces and plain ones are alike.
std::string plain(std::string text) {
    for (std::size_t at = text.find("\u2009"); at != std::string::npos; at = text.find("\u2009"))
        text.replace(at, 3, " ");
    return text;
}

std::string words_of(const Block& block) {
    std::string all = block.words + "\n" + block.told;
    for (const std::string& cell : block.head)
        all += "\n" + cell;
    for (const Block::Row& row : block.rows)
        for (const std::string& cell : row)
            all += "\n" + cell;
    return all;
}

std::string words_of(const std::vector<Block>& blocks) {
    std::string all;
    for (const Block& block : blocks)
        all += words_of(block) + "\n";
    return plain(all);
}

std::size_t count(const std::vector<Block>& blocks, Block::Kind kind) {
    return static_cast<std::size_t>(std::count_if(
        blocks.begin(), blocks.end(), [kind](const Block& b) { return b.kind == kind; }));
}

const Block::Row* row_of(const std::vector<Block>& blocks, const std::string& name) {
    for (const Block& block : blocks)
        for (const Block::Row& row : block.rows)
            if (!row.empty() && row[0] == name) return &row;
    return nullptr;
}

void contains(const std::string& all, const std::string& words) {
    CHECK_MESSAGE(all.find(plain(words)) != std::string::npos, words);
}

struct Reported {
    std::vector<Block> blocks;
    int pictures = 0;
};

/// The whole house, asked for once.
const Reported& reported() {
    static Reported all;
    if (!all.blocks.empty()) return all;
    stage::Stage stage(screens::wide);
    REQUIRE(stage.rest());
    stage.press("view.house");
    stage.press("report.house");
    all = {stage.report(), stage.report_pictures()};
    return all;
}

} // namespace

TEST_CASE("report: a sheet for every opening and a page for the house") {
    const house::House h = house::demo_house();
    const std::vector<Block>& blocks = reported().blocks;
    REQUIRE(!blocks.empty());
    CHECK(count(blocks, Block::Kind::page) == 1 + 2 * h.openings.size());
    CHECK(count(blocks, Block::Kind::signatures) == 1 + h.openings.size());
    CHECK(count(blocks, Block::Kind::figure) == 2 * h.openings.size());
    CHECK(reported().pictures == static_cast<int>(2 * h.openings.size()));
    CHECK(blocks[0].kind == Block::Kind::page);
    CHECK(blocks[0].words == "house");
    CHECK(blocks[1].words == h.name);
    const std::string all = words_of(blocks);
    for (const house::OpeningRecord& record : h.openings) {
        contains(all, record.name + ": particulars");
        contains(all, record.complaint);
        CHECK(row_of(blocks, record.name));
        for (const house::Caution& one : house::cautions(h, record)) {
            contains(all, one.words.substr(0, one.words.size() - house::whose_word.size()) +
                              std::string(house::check_word)); // with each, not once above
            contains(all, house::rule_in_print(*one.row));
        }
    }
    for (const char* wrong : {"nan", "inf ", "{0}", "{1}"})
        CHECK_MESSAGE(all.find(wrong) == std::string::npos, wrong);
}

TEST_CASE("report: prices of the openings make the price together") {
    long sum = 0, together = -1;
    for (const Block& block : reported().blocks) {
        if (block.manner != "openings sums") continue;
        for (const Block::Row& row : block.rows) {
            const std::size_t at = row[2].find('$');
            std::string words = row[2].substr(at == std::string::npos ? row[2].size() : at + 1);
            words.erase(std::remove(words.begin(), words.end(), ','), words.end()); // "1,391"
            const long price = words.empty() ? 0 : std::stol(words);
            if (row[0] == "Together")
                together = price;
            else
                sum += price;
        }
    }
    CHECK(together > 0);
    CHECK(together == sum);
}

TEST_CASE("report: a coldest place is told with its cut, a payback with its interest") {
    constexpr const char* cuts[] = {", head", ", jamb", ", sill", ", meeting rail"};
    int told = 0;
    for (const Block& block : reported().blocks) {
        if (block.head.empty() || block.head[0] != "Coldest place") continue;
        for (const Block::Row& row : block.rows) {
            if (row[0] == "Glass" || row[0] == "Storm panel") continue;
            for (std::size_t column = 1; column < row.size(); column += 2) {
                const auto in = [&](const char* cut) {
                    return row[column].find(cut) != std::string::npos;
                };
                CHECK_MESSAGE(
                    (row[column] == "–" || std::any_of(std::begin(cuts), std::end(cuts), in)),
                    row[column]);
                ++told;
            }
        }
    }
    CHECK(told > 8);
    for (const Block& block : reported().blocks) {
        const std::string words = words_of(block);
        for (std::size_t at = 0; (at = words.find("ayback", at)) != std::string::npos; ++at)
            CHECK_MESSAGE(words.find("interest", at) != std::string::npos, words);
        if (words.find("pays back") != std::string::npos)
            CHECK_MESSAGE(words.find("interest") != std::string::npos, words);
        CHECK_MESSAGE(words.find("draws") == std::string::npos, words);
    }
}

TEST_CASE("report: pictures are told in words") {
    int number = 0;
    for (const Block& block : reported().blocks) {
        if (block.kind != Block::Kind::figure) continue;
        CHECK(block.picture == number);
        const char* starts = number % 2 ? "Person " : "Cut at the ";
        CHECK(block.told.find(starts) == 0);
        CHECK(block.told.size() > 200);
        CHECK(!block.words.empty());
        ++number;
    }
}

TEST_CASE("report: the figures are those of the screens") {
    stage::Stage stage(screens::wide);
    REQUIRE(stage.rest());
    const char* const ids[] = {"strip.glass", "strip.ankles", "strip.rh", "strip.u", "strip.cost"};
    std::vector<std::string> shown; // Today's and the Remedy's
    for (const char* id : ids)
        for (const char* of : {".today", ".remedy"})
            shown.push_back(plain(value_of(stage, std::string(id) + of)));
    const std::string verdict = value_of(stage, "verdict");
    stage.press("view.sheet");
    const std::string size = value_of(stage, "sheet.estimating"),
                      rod = value_of(stage, "sheet.need.sealant");
    stage.press("view.bill");
    const std::string saving = value_of(stage, "bill.saving"),
                      payback = value_of(stage, "bill.payback"),
                      worth = value_of(stage, "bill.value"),
                      sentence = value_of(stage, "bill.verdict"),
                      price = value_of(stage, "bill.price");
    stage.press("view.house");
    stage.press("report.opening");
    const std::vector<Block>& blocks = stage.report();
    REQUIRE(!blocks.empty());
    CHECK(count(blocks, Block::Kind::page) == 2);
    const std::string all = words_of(blocks);
    for (const std::string& words : {verdict, size, rod, saving, payback, worth, sentence, price})
        contains(all, words);
    const char* const rows[] = {"Glass, inside face", "Bothered at the ankles",
                                "Indoor humidity that wets the glass", "U-factor, whole window",
                                "Heat lost in a year, this opening"};
    for (std::size_t i = 0; i < 5; ++i) {
        const Block::Row* cells = row_of(blocks, rows[i]);
        REQUIRE_MESSAGE(cells, rows[i]);
        REQUIRE(cells->size() == 4);
        for (std::size_t k = 0; k < 2; ++k)
            CHECK_MESSAGE(shown[2 * i + k].find(plain((*cells)[k + 1])) == 0, shown[2 * i + k]);
    }
    // Nothing was edited, and the buttons are there again.
    CHECK(stage.screen().house().selected == house::demo_house().selected);
    CHECK(stage.node("report.house")->enabled);
    CHECK(!stage.node("report.wait"));
}

TEST_CASE("report: readings, metric units and no remedy") {
    house::House h = house::demo_house();
    h.units = house::Units::si;
    h.selected = 0;
    h.openings[0].chosen = -1;
    h.openings[0].site.set(house::Entry::before_glass_c, 4);
    h.openings[0].site.set(house::Entry::before_casing_c, 12);
    stage::Stage stage(screens::wide, h);
    stage.press("view.house");
    stage.press("report.opening");
    const std::vector<Block>& blocks = stage.report();
    REQUIRE(!blocks.empty());
    const std::string all = words_of(blocks);
    contains(all, "Before the work: the casing");
    for (const Block& block : blocks) // what is said in both systems is in sentences
        if (block.kind == Block::Kind::table)
            CHECK_MESSAGE(words_of(block).find("°F") == std::string::npos, words_of(block));
    const Block::Row* glass = row_of(blocks, "Glass, inside face");
    REQUIRE(glass);
    CHECK(glass->size() == 3);
    contains(all, "No remedy is chosen");
}
