// SPDX-License-Identifier: MIT
#include "app/report_json.hpp"

#include "app/mirror_json.hpp"

namespace shimlight::app {
namespace {

/// In the order of Block::Kind.
constexpr const char* kinds[] = {"page", "heading", "sentence",  "table",
                                 "list", "figure",  "signatures"};

void put_text(std::string& out, const char* key, const std::string& text) {
    if (text.empty()) return;
    out += key;
    put_string(out, text);
}

void put_row(std::string& out, const view::Block::Row& row) {
    char lead = '[';
    for (const std::string& cell : row) {
        out += lead;
        put_string(out, cell);
        lead = ',';
    }
    out += ']';
}

void put_block(std::string& out, const view::Block& block) {
    out += "{\"k\":\"";
    out += kinds[static_cast<int>(block.kind)];
    out += '"';
    if (block.level > 0) out += ",\"l\":" + std::to_string(block.level);
    put_text(out, ",\"t\":", block.words);
    put_text(out, ",\"m\":", block.manner);
    put_text(out, ",\"d\":", block.told);
    if (block.picture >= 0) out += ",\"p\":" + std::to_string(block.picture);
    if (!block.head.empty()) {
        out += ",\"h\":";
        put_row(out, block.head);
    }
    const char* lead = ",\"r\":[";
    for (const view::Block::Row& row : block.rows) {
        out += lead;
        put_row(out, row);
        lead = ",";
    }
    if (!block.rows.empty()) out += ']';
    out += '}';
}

} // namespace

std::string report_json(const std::vector<view::Block>& blocks, const std::string& asked_by) {
    std::string out = "{\"by\":";
    put_string(out, asked_by);
    const char* lead = ",\"blocks\":[";
    for (const view::Block& block : blocks) {
        out += lead;
        put_block(out, block);
        lead = ",";
    }
    return out + "]}";
}

} // namespace shimlight::app
