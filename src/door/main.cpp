// SPDX-License-Identifier: MIT
// The door on the command line: shimlight QUESTION < in.json > out.json
#include "door/door.hpp"
#include "house/json_tree.hpp"

#include <cstdio>
#include <string>

namespace {

constexpr int answered = 0, refused = 2;

constexpr char usage[] =
    "usage: shimlight QUESTION < in.json > out.json\n"
    "\n"
    "QUESTION is glazing, section, comfort, room, leak, moisture, thermography,\n"
    "find_out or house.\n"
    "The question's fields are read as one JSON object from standard input, the answer is written\n"
    "as one JSON object to standard output. Exit status: 0 answered, 2 refused with\n"
    "{\"error\":{\"path\":…,\"message\":…}}.\n";

/// All of standard input, but no more than one byte beyond what the door accepts.
std::string read_input() {
    std::string text(shimlight::house::max_text_bytes + 1, '\0');
    text.resize(std::fread(text.data(), 1, text.size(), stdin));
    return text;
}

} // namespace

int main(int count, char** arguments) {
    if (count != 2 || arguments[1][0] == '-') {
        std::fputs(usage, stderr);
        return refused;
    }
    const std::string answer = shimlight::door::ask(arguments[1], read_input());
    std::printf("%s\n", answer.c_str());
    return shimlight::door::is_error(answer) ? refused : answered;
}
