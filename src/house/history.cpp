// SPDX-License-Identifier: MIT
#include "house/history.hpp"

#include <utility>

namespace shimlight::house {

History::History(House start) {
    steps_.push_back(std::move(start));
}

void History::change(House next, const std::string& gesture) {
    using Offset = std::vector<House>::difference_type;
    const auto present = steps_.begin() + static_cast<Offset>(position_);
    steps_.erase(present + 1, steps_.end()); // what was undone is now out of reach
    const bool goes_on = !gesture.empty() && gesture == gesture_;
    if (goes_on) {
        steps_[position_] = std::move(next);
        return;
    }
    gesture_ = gesture;
    steps_.push_back(std::move(next));
    if (steps_.size() > limit_) steps_.erase(steps_.begin());
    position_ = steps_.size() - 1;
}

void History::settle() {
    gesture_.clear();
}

bool History::can_undo() const {
    return position_ > 0;
}

bool History::can_redo() const {
    return position_ + 1 < steps_.size();
}

void History::undo() {
    settle();
    if (can_undo()) --position_;
}

void History::redo() {
    settle();
    if (can_redo()) ++position_;
}

} // namespace shimlight::house
