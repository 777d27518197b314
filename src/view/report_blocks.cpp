// SPDX-License-Identifier: MIT
#include "view/report_blocks.hpp"

namespace shimlight::view {

Block& Writer::add(Block::Kind kind, std::string words) {
    blocks_.push_back({});
    blocks_.back().kind = kind;
    blocks_.back().words = std::move(words);
    return blocks_.back();
}

void Writer::page(std::string name) {
    add(Block::Kind::page, std::move(name));
}

void Writer::heading(int level, std::string words) {
    add(Block::Kind::heading, std::move(words)).level = level;
}

void Writer::sentence(std::string words, std::string manner) {
    if (words.empty()) return;
    add(Block::Kind::sentence, std::move(words)).manner = std::move(manner);
}

void Writer::table(std::string caption, Block::Row head, std::vector<Block::Row> rows,
                   std::string manner) {
    if (rows.empty()) return;
    Block& block = add(Block::Kind::table, std::move(caption));
    block.head = std::move(head);
    block.rows = std::move(rows);
    block.manner = std::move(manner);
}

void Writer::list(std::vector<Block::Row> rows, std::string manner) {
    if (rows.empty()) return;
    Block& block = add(Block::Kind::list, "");
    block.rows = std::move(rows);
    block.manner = std::move(manner);
}

void Writer::figure(int picture, std::string caption) {
    add(Block::Kind::figure, std::move(caption)).picture = picture;
}

void Writer::signatures() {
    add(Block::Kind::signatures, "").rows = {{"Customer"}, {"Contractor"}, {"Date"}};
}

} // namespace shimlight::view
