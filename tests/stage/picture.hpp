// SPDX-License-Identifier: MIT
// A screen without a browser: ImGui's triangles and the temperature washes drawn by plain code, for
// tests and for looking at.
#pragma once

#include "view/platform.hpp"

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

namespace shimlight::stage {

struct Picture {
    int width = 0, height = 0;
    std::vector<std::uint32_t> pixels; ///< as ImU32, row by row
};

/// Draws a frame over `paper`; letters from the atlas of the current ImGui context.
Picture draw(const ImDrawData& data, ImU32 paper);

/// Writes an uncompressed PNG; false when the file cannot be written.
bool write_png(const Picture& picture, const std::string& path);

/// Washes temperatures pixel by pixel: colours as on the page, without hatches.
class PlainPainter : public view::FieldPainter {
  public:
    void paint(ImDrawList* list, const view::FieldPicture& picture) override;
    void forget() { jobs_.clear(); }

  private:
    std::deque<view::FieldPicture> jobs_; ///< of this frame
};

} // namespace shimlight::stage
