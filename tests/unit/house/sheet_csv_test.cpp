// SPDX-License-Identifier: MIT
// The table for spreadsheets, read back by a reader of its own (RFC 4180) and by the wrong one.
#include "house/sheet.hpp"
#include "unit/physics/draw.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

using namespace shimlight;
using namespace shimlight::house;

namespace {

struct Cell {
    std::string text;
    bool quoted = false;
};
using Rows = std::vector<std::vector<Cell>>;

/// RFC 4180, strictly: a quote within an unquoted cell or after a closing one is a fault.
Rows read_rfc4180(const std::string& csv, char separator) {
    Rows rows(1);
    std::size_t i = csv.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0;
    rows.back().push_back({});
    for (; i < csv.size(); ++i) {
        Cell& cell = rows.back().back();
        const char c = csv[i];
        if (c == '"') {
            REQUIRE(cell.text.empty());
            cell.quoted = true;
            for (++i;; ++i) {
                REQUIRE(i < csv.size());
                if (csv[i] != '"')
                    cell.text += csv[i];
                else if (i + 1 < csv.size() && csv[i + 1] == '"')
                    cell.text += csv[i++];
                else
                    break;
            }
            const bool ends = i + 1 == csv.size() || csv[i + 1] == separator || csv[i + 1] == '\r';
            REQUIRE(ends);
        } else if (c == separator) {
            rows.back().push_back({});
        } else if (c == '\r') {
            REQUIRE(csv[i + 1] == '\n');
            ++i;
            if (i + 1 < csv.size()) rows.push_back({{}});
        } else {
            REQUIRE(c != '\n');
            cell.text += c;
        }
    }
    return rows;
}

/// As a spreadsheet splits that expects another separator, or takes quotes for letters.
std::vector<std::string> split_wrongly(const std::string& csv, const std::string& at) {
    std::vector<std::string> cells(1);
    for (const char c : csv) {
        if (at.find(c) != std::string::npos)
            cells.emplace_back();
        else if (c != '"')
            cells.back() += c;
    }
    return cells;
}

bool is_number(const std::string& text) {
    char* end = nullptr;
    std::strtol(text.c_str(), &end, 10);
    return !text.empty() && *end == '\0';
}

/// Whether a spreadsheet may take it for a formula: blanks of any kind do not count.
bool dangerous(std::string text) {
    const char* blanks[] = {
        " ", "\t", "\xC2\xA0", "\xE2\x80\x8B", "\xE2\x80\xAF", "\xE3\x80\x80", "\xEF\xBB\xBF"};
    for (bool cut = true; cut;) {
        cut = false;
        for (const std::string blank : blanks)
            if (text.substr(0, blank.size()) == blank) {
                text.erase(0, blank.size());
                cut = true;
            }
    }
    if (text.empty() || is_number(text)) return false;
    for (const std::string sign : {"=", "+", "-", "@", "\r", "\n", "\xEF\xBC\x9D", "\xEF\xBC\x8B",
                                   "\xEF\xBC\x8D", "\xEF\xBC\xA0", "\xE2\x88\x92"})
        if (text.substr(0, sign.size()) == sign) return true;
    return false;
}

void check_harmless(const std::string& csv, char separator) {
    for (const auto& row : read_rfc4180(csv, separator))
        for (const Cell& cell : row) {
            CHECK_MESSAGE(!dangerous(cell.text), cell.text);
            if (!cell.quoted) CHECK((cell.text.empty() || is_number(cell.text)));
        }
    for (const char* at : {",\r\n", ";\r\n", "\t\r\n", "|\r\n", ",;\r\n"})
        for (const std::string& cell : split_wrongly(csv, at))
            CHECK_MESSAGE(!dangerous(cell), cell);
}

const char* const hostile[] = {"=1+1",
                               "+1",
                               "-2+3",
                               "@SUM(A1)",
                               "\t=1",
                               "\r=1",
                               "\n=1",
                               "  =1",
                               "\xC2\xA0=1",
                               "\xE3\x80\x80\xEF\xBC\x9D"
                               "1",
                               "\xEF\xBC\x9D"
                               "1+1",
                               "\xEF\xBC\x8B"
                               "1",
                               "\xEF\xBC\x8D"
                               "1",
                               "\xEF\xBC\xA0SUM",
                               "\xE2\x88\x92"
                               "1",
                               "\"=1\"",
                               "\",=1",
                               "a\";=1;\"",
                               "x;=HYPERLINK(\"a\")",
                               "x,=1",
                               "x\t=1",
                               "x|=1",
                               "x\r\n=1",
                               "x; \xE2\x80\x8B=1",
                               "'=1",
                               "' =1",
                               "\"\"=1",
                               "=cmd|' /C calc'!A0",
                               "x\";\"=1",
                               "x,\",;\t=1"};

House hostile_house(const std::string& text) {
    House house = demo_house();
    house.name = house.currency = text;
    for (OpeningRecord& record : house.openings) {
        record.name = record.complaint = text;
        for (opening::Remedy& remedy : record.remedies)
            remedy.name = text;
    }
    return house;
}

/// In its place by the head of its column.
std::string cell(const Rows& rows, std::size_t row, const std::string& head) {
    for (std::size_t i = 0; i < rows[0].size(); ++i)
        if (rows[0][i].text == head) return rows[row][i].text;
    FAIL(head);
    return "";
}

} // namespace

TEST_CASE("csv: the test's own reader and judge know what they should") {
    const Rows rows = read_rfc4180("a,\"b\"\"c\",\"d,\ne\"\r\n1,,\r\n", ',');
    REQUIRE(rows.size() == 2);
    CHECK(rows[0][1].text == "b\"c");
    CHECK(rows[0][2].text == "d,\ne");
    CHECK(rows[1].size() == 3);
    CHECK(dangerous(" =1"));
    CHECK(dangerous("-1+2"));
    CHECK_FALSE(dangerous("-12"));
    CHECK_FALSE(dangerous("'=1"));
}

TEST_CASE("csv: no text from a file becomes a formula, whoever splits it") {
    for (const char* text : hostile)
        for (const Separator s : {Separator::comma, Separator::semicolon}) {
            CAPTURE(std::string(text));
            check_harmless(sheet_csv(hostile_house(text), s), static_cast<char>(s));
        }
}

TEST_CASE("csv: random texts of dangerous signs") {
    const char* const parts[] = {"=",        "+",
                                 "-",        "@",
                                 "\"",       "'",
                                 ",",        ";",
                                 "\t",       "\r",
                                 "\n",       " ",
                                 "|",        "a",
                                 "1",        "\xEF\xBC\x9D",
                                 "\xC2\xA0", "\xE3\x80\x80",
                                 "ü",        "\xEF\xBC\x9B"};
    physics::Draw draw(5);
    for (int i = 0; i < 400; ++i) {
        std::string text;
        for (int n = draw.whole(0, 12); n > 0; --n)
            text += parts[draw.whole(0, static_cast<int>(std::size(parts)) - 1)];
        CAPTURE(text);
        House house = hostile_house(text);
        house.openings.resize(1);
        const Separator s = i % 2 ? Separator::comma : Separator::semicolon;
        check_harmless(sheet_csv(house, s), static_cast<char>(s));
    }
}

TEST_CASE("csv: an ordinary text comes back as it was") {
    House house = demo_house();
    house.openings[0].name = "Bedroom, \"north\"; upstairs - left = cold";
    house.openings[0].complaint = "Zieht wie Hechtsuppe – täglich";
    const Rows rows = read_rfc4180(sheet_csv(house), ',');
    CHECK(cell(rows, 1, "opening") == house.openings[0].name);
    CHECK(cell(rows, 1, "complaint") == house.openings[0].complaint);
    CHECK(cell(rows, 1, "currency") == "$");
    house.openings[0].name = "3-4"; // would become a day in March or April
    CHECK(cell(read_rfc4180(sheet_csv(house), ','), 1, "opening") == "'3-4");
}

TEST_CASE("csv: every row has every column, the last is the house's") {
    const House house = demo_house();
    const std::string csv = sheet_csv(house, Separator::semicolon);
    CHECK(csv.substr(0, 3) == "\xEF\xBB\xBF");
    const Rows rows = read_rfc4180(csv, ';');
    REQUIRE(rows.size() == house.openings.size() + 2);
    for (const auto& row : rows)
        CHECK(row.size() == rows[0].size());
    const HouseTotal total = house_total(house);
    const std::size_t last = rows.size() - 1;
    CHECK(cell(rows, last, "opening") == "House: 3 openings with a remedy");
    CHECK(cell(rows, last, "labor") == std::to_string(std::lround(total.labour)));
    CHECK(cell(rows, last, "together") == std::to_string(std::lround(total.total())));
    CHECK(cell(rows, last, "to buy").find("Window foam") != std::string::npos);
    for (std::size_t i = 0; i < house.openings.size(); ++i) {
        const Sheet s = sheet(house, house.openings[i]);
        CHECK(cell(rows, i + 1, "work minutes") == std::to_string(std::lround(60 * s.hours)));
        CHECK(cell(rows, i + 1, "estimating width mm") ==
              std::to_string(std::lround(1000 * s.order.wide.estimating_m)));
        CHECK(cell(rows, i + 1, "method") == std::string(method_row(s.order.method).name));
        CHECK(cell(rows, i + 1, "cautions").find("check your local code") != std::string::npos);
        for (const MaterialLine& l : s.materials)
            if (l.row->key == "foam")
                CHECK(cell(rows, i + 1, "Window foam, low-pressure ml") ==
                      std::to_string(std::lround(1000 * l.need)));
    }
}

TEST_CASE("csv: sizes in millimetres and as a tape shows inches; unit size only when told") {
    House house = demo_house();
    OpeningRecord& record = house.openings[0];
    record.remedies = {opening::make_remedy("insert_open", today_case(house, record))};
    record.chosen = 0;
    for (int i = 0; i < 3; ++i) {
        record.site.set(static_cast<Entry>(static_cast<int>(Entry::width_top_m) + i),
                        35.875 * 0.0254);
        record.site.set(static_cast<Entry>(static_cast<int>(Entry::height_left_m) + i),
                        60 * 0.0254);
    }
    record.site.set(Entry::sill_rise_m, -0.003);
    Rows rows = read_rfc4180(sheet_csv(house), ',');
    CHECK(cell(rows, 1, "width middle mm") == "911");
    CHECK(cell(rows, 1, "smallest width in") == "35 7/8 in");
    CHECK(cell(rows, 1, "sill right end higher mm") == "-3");
    CHECK(cell(rows, 1, "ordering width mm").empty());
    CHECK(cell(rows, 1, "who deducts") == "not asked yet");
    record.site.set(Entry::maker_deducts, 0);
    rows = read_rfc4180(sheet_csv(house), ',');
    CHECK(cell(rows, 1, "ordering width in") == "35 5/8 in");
    CHECK(cell(rows, 1, "ordering height mm") == "1518"); // 59 3/4 in
    CHECK(cell(rows, 1, "all measured") == "yes");
}

TEST_CASE("csv: inches as a tape shows them") {
    CHECK(inch_text(0.0254 * 35.875) == "35 7/8 in");
    CHECK(inch_text(0.0254 * 7 / 8) == "7/8 in");
    CHECK(inch_text(0.0254 * 36) == "36 in");
    CHECK(inch_text(0) == "0 in");
    CHECK(inch_text(-0.0254 * 1.5) == "minus 1 1/2 in");
    CHECK(inch_text(0.0254 * 35.99) == "36 in");
}
