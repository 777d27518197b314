// SPDX-License-Identifier: MIT
// What a report says, in plain blocks: the page makes elements of them, and paper of those.
#pragma once

#include <string>
#include <vector>

namespace shimlight::view {

struct Block {
    enum class Kind {
        page,      ///< what follows begins on a new sheet side; `words`: its name
        heading,   ///< level 1…3
        sentence,  ///< `manner`: "quote", "verdict", "soft", "warning" or nothing
        table,     ///< `words`: caption; the first column names its row
        list,      ///< rows of a sentence and of what it rests on
        figure,    ///< `words`: caption; `told`: what the picture shows
        signatures ///< rows of who signs
    };
    using Row = std::vector<std::string>;

    Kind kind = Kind::sentence;
    int level = 0;
    std::string words, manner, told;
    Row head;
    std::vector<Row> rows;
    int picture = -1; ///< number of a figure's picture, from 0
};

class Writer {
  public:
    explicit Writer(std::vector<Block>& blocks) : blocks_(blocks) {}

    void page(std::string name);
    void heading(int level, std::string words);
    /// Empty words take no room.
    void sentence(std::string words, std::string manner = {});
    /// Left out without rows.
    void table(std::string caption, Block::Row head, std::vector<Block::Row> rows,
               std::string manner = {});
    void list(std::vector<Block::Row> rows, std::string manner = {});
    void figure(int picture, std::string caption);
    void signatures();

  private:
    std::vector<Block>& blocks_;
    Block& add(Block::Kind kind, std::string words);
};

} // namespace shimlight::view
