// SPDX-License-Identifier: MIT
#include "stage/drawn_text.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace shimlight::stage {
namespace {

struct Letter {
    const ImFont* font = nullptr;
    const ImFontGlyph* glyph = nullptr;
};

/// Each place of the atlas holds one letter of one font.
std::map<std::pair<float, float>, Letter> letters() {
    std::map<std::pair<float, float>, Letter> found;
    for (const ImFont* font : ImGui::GetIO().Fonts->Fonts)
        for (const ImFontGlyph& glyph : font->Glyphs)
            if (glyph.Visible) found[{glyph.U0, glyph.V0}] = {font, &glyph};
    return found;
}

void append_utf8(std::string& words, unsigned int code) {
    if (code < 0x80) {
        words += static_cast<char>(code);
    } else if (code < 0x800) {
        words += static_cast<char>(0xC0 | code >> 6);
        words += static_cast<char>(0x80 | (code & 0x3F));
    } else {
        words += static_cast<char>(0xE0 | code >> 12);
        words += static_cast<char>(0x80 | (code >> 6 & 0x3F));
        words += static_cast<char>(0x80 | (code & 0x3F));
    }
}

/// Where the edge of a page cuts through a line, its letters are seen or not all together.
float middle_of_line(const ImDrawVert* corner, const Letter& letter) {
    const ImFontGlyph& g = *letter.glyph;
    const float scale = (corner[2].pos.x - corner[0].pos.x) / (g.X1 - g.X0);
    return corner[0].pos.y + (letter.font->FontSize / 2 - g.Y0) * scale;
}

class Speller {
  public:
    explicit Speller(std::vector<DrawnText>& texts) : texts_(texts) {}

    /// Four corners as ImGui lays a letter: from the upper left one clockwise.
    void take(const ImDrawVert* corner, const Letter& letter, const ImVec4& clip) {
        const ImFontGlyph& g = *letter.glyph;
        const float scale = (corner[2].pos.x - corner[0].pos.x) / (g.X1 - g.X0);
        const float x = corner[0].pos.x - g.X0 * scale, y = corner[0].pos.y - g.Y0 * scale;
        const float gap = x - next_x_, space = letter.font->FallbackAdvanceX * scale * 0.9f;
        const bool goes_on = letter.font == font_ && std::fabs(y - y_) < 0.6f && gap > -1 &&
                             gap < std::max(space, 6.0f);
        if (!goes_on) texts_.push_back({{}, std::max(corner[0].pos.x, clip.x), clip.w, 0, 0});
        DrawnText& text = texts_.back();
        if (goes_on && gap > 1.5f) text.words += ' ';
        append_utf8(text.words, g.Codepoint);
        text.y0_px = std::min(text.y0_px, std::max(corner[0].pos.y, clip.y));
        text.x1_px = std::max(text.x1_px, std::min(corner[2].pos.x, clip.z));
        text.y1_px = std::max(text.y1_px, std::min(corner[2].pos.y, clip.w));
        font_ = letter.font;
        y_ = y;
        next_x_ = x + g.AdvanceX * scale;
    }

  private:
    std::vector<DrawnText>& texts_;
    const ImFont* font_ = nullptr;
    float y_ = 0, next_x_ = 0;
};

} // namespace

std::vector<DrawnText> drawn_texts(const ImDrawData& data) {
    std::vector<DrawnText> texts;
    const auto known = letters();
    Speller speller(texts);
    for (const ImDrawList* list : data.CmdLists) {
        for (const ImDrawCmd& command : list->CmdBuffer) {
            const ImDrawIdx* index = list->IdxBuffer.Data + command.IdxOffset;
            for (unsigned int i = 0; i + 6 <= command.ElemCount; i += 3) {
                const ImDrawVert* corner = &list->VtxBuffer[static_cast<int>(index[i])];
                // A letter is two triangles over four corners in a row.
                if (index[i + 5] != index[i] + 3 || index[i + 1] != index[i] + 1) continue;
                const auto found = known.find({corner[0].uv.x, corner[0].uv.y});
                if (found == known.end() || corner[2].uv.x != found->second.glyph->U1) continue;
                const ImVec4& clip = command.ClipRect;
                const float x = (corner[0].pos.x + corner[2].pos.x) / 2;
                const float y = middle_of_line(corner, found->second);
                const bool seen = x >= clip.x && x <= clip.z && y >= clip.y && y <= clip.w;
                if (seen) speller.take(corner, found->second, clip);
                i += 3;
            }
        }
    }
    return texts;
}

} // namespace shimlight::stage
