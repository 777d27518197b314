// SPDX-License-Identifier: MIT
#include "view/mirror.hpp"

namespace shimlight::view {

void Mirror::begin(std::vector<MirrorEvent> events) {
    nodes_.clear();
    events_ = std::move(events);
    for (const MirrorEvent& event : events_) {
        if (event.kind == MirrorEvent::Kind::focus) focus_ = event.id;
        if (event.kind == MirrorEvent::Kind::blur && focus_ == event.id) focus_.clear();
    }
}

bool Mirror::pressed(std::string_view id) const {
    for (const MirrorEvent& event : events_)
        if (event.kind == MirrorEvent::Kind::press && event.id == id) return true;
    return false;
}

std::optional<double> Mirror::number(std::string_view id) const {
    std::optional<double> last;
    for (const MirrorEvent& event : events_)
        if (event.kind == MirrorEvent::Kind::number && event.id == id) last = event.number;
    return last;
}

std::optional<std::string> Mirror::text(std::string_view id) const {
    std::optional<std::string> last;
    for (const MirrorEvent& event : events_)
        if (event.kind == MirrorEvent::Kind::text && event.id == id) last = event.text;
    return last;
}

} // namespace shimlight::view
