// SPDX-License-Identifier: MIT
#include "app/mirror_json.hpp"

#include <cmath>
#include <cstdio>

namespace shimlight::app {
namespace {

const char* role_name(view::Role role) {
    switch (role) {
    case view::Role::heading:
        return "heading";
    case view::Role::button:
        return "button";
    case view::Role::toggle:
        return "toggle";
    case view::Role::tab:
        return "tab";
    case view::Role::slider:
        return "slider";
    case view::Role::choice:
        return "choice";
    case view::Role::text:
        return "text";
    case view::Role::number:
        return "number";
    case view::Role::output:
        return "output";
    case view::Role::figure:
        return "figure";
    case view::Role::status:
        return "status";
    case view::Role::image:
        return "image";
    case view::Role::photo:
        return "photo";
    }
    return "output";
}

void put_number(std::string& out, double number, const char* format) {
    char digits[32];
    std::snprintf(digits, sizeof digits, format, std::isfinite(number) ? number : 0.0);
    out += digits;
}

void put_text(std::string& out, const char* key, const std::string& text) {
    if (text.empty()) return;
    out += key;
    put_string(out, text);
}

void put_rect(std::string& out, const view::MirrorRect& rect, float zoom) {
    const float sides[] = {rect.x * zoom, rect.y * zoom, rect.w * zoom, rect.h * zoom};
    const char* lead = ",\"b\":[";
    for (const float side : sides) {
        out += lead;
        put_number(out, side, "%.1f"); // a tenth of a CSS px is finer than any finger
        lead = ",";
    }
    out += ']';
}

void put_range(std::string& out, const view::MirrorNode& node) {
    const double numbers[] = {node.min, node.max, node.now, node.step};
    const char* lead = ",\"s\":[";
    for (const double number : numbers) {
        out += lead;
        put_number(out, number, "%.9g");
        lead = ",";
    }
    out += ']';
}

void put_options(std::string& out, const std::vector<std::string>& options) {
    const char* lead = ",\"o\":[";
    for (const std::string& option : options) {
        out += lead;
        put_string(out, option);
        lead = ",";
    }
    out += ']';
}

void put_node(std::string& out, const view::MirrorNode& node, float zoom) {
    out += "{\"i\":";
    put_string(out, node.id);
    out += ",\"r\":\"";
    out += role_name(node.role);
    out += '"';
    put_text(out, ",\"n\":", node.name);
    put_text(out, ",\"v\":", node.value);
    put_text(out, ",\"h\":", node.help);
    put_text(out, ",\"a\":", node.action);
    put_text(out, ",\"g\":", node.group);
    put_rect(out, node.rect, zoom);
    if (node.role == view::Role::slider || node.role == view::Role::choice) put_range(out, node);
    if (!node.options.empty()) put_options(out, node.options);
    if (node.on) out += ",\"p\":1";
    if (!node.enabled) out += ",\"x\":1";
    if (!node.reachable) out += ",\"u\":1";
    if (node.cut) out += ",\"c\":1";
    if (node.modal) out += ",\"m\":1";
    out += '}';
}

} // namespace

void put_string(std::string& out, const std::string& text) {
    out += '"';
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            char code[8];
            std::snprintf(code, sizeof code, "\\u%04x", static_cast<unsigned>(c));
            out += code;
        } else {
            out += c;
        }
    }
    out += '"';
}

std::string mirror_json(const std::vector<view::MirrorNode>& nodes, float zoom) {
    std::string out;
    out.reserve(nodes.size() * 160);
    out += '[';
    for (const view::MirrorNode& node : nodes) {
        if (out.size() > 1) out += ',';
        put_node(out, node, zoom);
    }
    out += ']';
    return out;
}

} // namespace shimlight::app
