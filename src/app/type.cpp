// SPDX-License-Identifier: MIT
#include "app/type.hpp"

#include "app/fonts_embedded.hpp"

#include <algorithm>
#include <span>

namespace shimlight::app {
namespace {

/// Above this the atlas would outgrow what small graphics cards take (16 M texels); letters are
/// enlarged from here on, and at six device px to the CSS px nobody sees it.
constexpr float finest_dpr = 6;

/// Latin, Greek, punctuation, figures, arrows, operators and marks; the font holds a part of them.
constexpr ImWchar ranges[] = {0x20,   0x7E,   0xA0,   0xFF,   0x391,  0x3C9,  0x2000,
                              0x206F, 0x2080, 0x208E, 0x2150, 0x222B, 0x2248, 0x2265,
                              0x25A0, 0x25FF, 0x2605, 0x2606, 0x2713, 0x2717, 0};

/// What stands in figures and their units: drawing letters takes time at the start, large ones
/// most.
constexpr ImWchar figure_ranges[] = {0x20,   0x7E,   0xB0,   0xBE,   0xD7,   0xD7,   0x394,  0x3C8,
                                     0x2000, 0x206F, 0x2080, 0x208E, 0x2150, 0x215E, 0x2190, 0x2193,
                                     0x2212, 0x2212, 0x221E, 0x221E, 0x2248, 0x2265, 0};

using File = std::span<const unsigned char>;

/// Joins the font added before, where `joins`: what that one lacks is taken from this file.
ImFont* add(File file, float size_px, bool joins = false, const ImWchar* glyphs = ranges) {
    ImFontConfig config;
    config.MergeMode = joins;
    config.FontDataOwnedByAtlas = false;
    // Letters start on whole device px, so that one upright column of texels meets one of pixels.
    config.OversampleH = 1;
    config.PixelSnapH = true;
    config.GlyphRanges = glyphs;
    // ImGui asks for a writable pointer but only reads what it does not own.
    void* bytes = const_cast<unsigned char*>(file.data());
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(bytes, static_cast<int>(file.size()), size_px,
                                                      &config);
}

/// Accents come in regular.
ImFont* add_semibold(float size_px) {
    add(fonts::inter_semibold_otf, size_px);
    return add(fonts::inter_regular_otf, size_px, true);
}

/// All but figures comes in semibold.
ImFont* add_bold(float size_px) {
    add(fonts::inter_bold_otf, size_px);
    add(fonts::inter_semibold_otf, size_px, true, figure_ranges);
    return add(fonts::inter_regular_otf, size_px, true, figure_ranges);
}

void enlarge(ImFont& font, float factor) {
    for (ImFontGlyph& glyph : font.Glyphs) {
        glyph.X0 *= factor;
        glyph.X1 *= factor;
        glyph.Y0 *= factor;
        glyph.Y1 *= factor;
        glyph.AdvanceX *= factor;
    }
    font.FontSize *= factor;
    font.Ascent *= factor;
    font.Descent *= factor;
    font.BuildLookupTable();
}

} // namespace

view::Fonts build_type(float dpr) {
    ImGuiIO& io = ImGui::GetIO();
    const float scale = std::min(dpr, finest_dpr);
    io.Fonts->Clear();
    io.Fonts->Flags |= ImFontAtlasFlags_NoMouseCursors;
    view::Fonts fonts;
    fonts.body = add(fonts::inter_regular_otf, 15 * scale); // first: ImGui's default
    fonts.small = add(fonts::inter_regular_otf, 13 * scale);
    fonts.strong = add_semibold(15 * scale);
    fonts.title = add_semibold(20 * scale);
    fonts.figure = add_bold(20 * scale);
    fonts.large = add_bold(28 * scale);
    io.Fonts->Build();
    if (dpr > scale)
        for (ImFont* font : io.Fonts->Fonts)
            enlarge(*font, dpr / scale);
    io.FontGlobalScale = 1 / dpr;
    return fonts;
}

} // namespace shimlight::app
