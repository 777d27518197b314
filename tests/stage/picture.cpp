// SPDX-License-Identifier: MIT
#include "stage/picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace shimlight::stage {
namespace {

struct Colour {
    float r = 0, g = 0, b = 0, a = 0; ///< 0…255; alpha 0…1
};

Colour unpack(ImU32 c) {
    const auto part = [c](int shift) { return static_cast<float>((c >> shift) & 255u); };
    return {part(IM_COL32_R_SHIFT), part(IM_COL32_G_SHIFT), part(IM_COL32_B_SHIFT),
            part(IM_COL32_A_SHIFT) / 255};
}

std::uint32_t blend(std::uint32_t under, const Colour& over) {
    const Colour u = unpack(under);
    const auto mix = [a = over.a](float below, float above) {
        return static_cast<int>(std::lround(below + (above - below) * a));
    };
    return IM_COL32(mix(u.r, over.r), mix(u.g, over.g), mix(u.b, over.b), 255);
}

struct Letters {
    unsigned char* alpha = nullptr;
    int width = 0, height = 0;
    float at(float u, float v) const {
        const int x = std::clamp(static_cast<int>(u * static_cast<float>(width)), 0, width - 1);
        const int y = std::clamp(static_cast<int>(v * static_cast<float>(height)), 0, height - 1);
        return static_cast<float>(alpha[y * width + x]) / 255;
    }
};

struct Clip {
    int x0, y0, x1, y1;
};

class Raster {
  public:
    Raster(Picture& picture, ImVec2 scale) : picture_(picture), scale_(scale) {
        ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&letters_.alpha, &letters_.width,
                                                 &letters_.height);
    }

    Clip clip(const ImVec4& c) const {
        const auto at = [](float px, float k, int most) {
            return std::clamp(static_cast<int>(std::lround(px * k)), 0, most);
        };
        return {at(c.x, scale_.x, picture_.width), at(c.y, scale_.y, picture_.height),
                at(c.z, scale_.x, picture_.width), at(c.w, scale_.y, picture_.height)};
    }

    void triangle(const ImDrawVert& a, ImDrawVert b, ImDrawVert c, const Clip& k) {
        float area = cross(place(a), place(b), place(c));
        if (area == 0) return;
        if (area < 0) std::swap(b, c), area = -area;
        const std::array<ImVec2, 3> p{place(a), place(b), place(c)};
        const auto [x0, x1] = std::minmax({p[0].x, p[1].x, p[2].x});
        const auto [y0, y1] = std::minmax({p[0].y, p[1].y, p[2].y});
        const std::array<Colour, 3> ink{unpack(a.col), unpack(b.col), unpack(c.col)};
        for (int y = std::max(k.y0, static_cast<int>(y0)); y < std::min<float>(k.y1, y1 + 1); ++y)
            for (int x = std::max(k.x0, static_cast<int>(x0)); x < std::min<float>(k.x1, x1 + 1);
                 ++x) {
                const ImVec2 at{static_cast<float>(x) + 0.5f, static_cast<float>(y) + 0.5f};
                if (!inside(p, at)) continue;
                const float wb = cross(p[2], p[0], at) / area, wc = cross(p[0], p[1], at) / area;
                const float wa = 1 - wb - wc;
                const auto mix = [&](float i, float j, float l) {
                    return wa * i + wb * j + wc * l;
                };
                Colour out{mix(ink[0].r, ink[1].r, ink[2].r), mix(ink[0].g, ink[1].g, ink[2].g),
                           mix(ink[0].b, ink[1].b, ink[2].b), mix(ink[0].a, ink[1].a, ink[2].a)};
                out.a *= letters_.at(mix(a.uv.x, b.uv.x, c.uv.x), mix(a.uv.y, b.uv.y, c.uv.y));
                set(x, y, out);
            }
    }

    void wash(const view::FieldPicture& f, const Clip& k) {
        const section::Field& field = f.solved->field;
        for (int y = k.y0; y < k.y1; ++y)
            for (int x = k.x0; x < k.x1; ++x) {
                const ImVec2 css{(static_cast<float>(x) + 0.5f) / scale_.x,
                                 (static_cast<float>(y) + 0.5f) / scale_.y};
                const section::Point at = f.placement.to_section(css);
                const bool within = at.x_m > field.x_m.front() && at.x_m < field.x_m.back() &&
                                    at.y_m > field.y_m.front() && at.y_m < field.y_m.back();
                if (!within || !solid(field, at)) continue;
                const view::Rgb c = f.scale.colour(field.probe_c(at));
                set(x, y, {c.r * 255, c.g * 255, c.b * 255, f.opacity});
            }
    }

  private:
    static float cross(ImVec2 a, ImVec2 b, ImVec2 c) {
        return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    }
    /// A pixel on an edge that two triangles share belongs to one of them.
    static bool inside(const std::array<ImVec2, 3>& p, ImVec2 at) {
        for (std::size_t i = 0; i < 3; ++i) {
            const ImVec2 from = p[i], to = p[(i + 1) % 3];
            const float side = cross(from, to, at);
            const bool owned = to.y < from.y || (to.y == from.y && to.x > from.x);
            if (side < 0 || (side == 0 && !owned)) return false;
        }
        return true;
    }
    static bool solid(const section::Field& f, section::Point at) {
        const auto cell = [](const std::vector<double>& lines, double v) {
            return std::upper_bound(lines.begin(), lines.end(), v) - lines.begin() - 1;
        };
        const auto i = cell(f.x_m, at.x_m), j = cell(f.y_m, at.y_m);
        return f.conductivity_w_mk[static_cast<std::size_t>(j * f.columns() + i)] > 0;
    }
    ImVec2 place(const ImDrawVert& v) const { return {v.pos.x * scale_.x, v.pos.y * scale_.y}; }
    void set(int x, int y, const Colour& c) {
        auto& pixel = picture_.pixels[static_cast<std::size_t>(y * picture_.width + x)];
        pixel = blend(pixel, c);
    }

    Picture& picture_;
    ImVec2 scale_;
    Letters letters_;
};

void play_nothing(const ImDrawList*, const ImDrawCmd*) {}

std::uint32_t crc_of(const std::string& bytes, std::size_t from) {
    std::uint32_t crc = ~0u;
    for (std::size_t i = from; i < bytes.size(); ++i) {
        crc ^= static_cast<unsigned char>(bytes[i]);
        for (int bit = 0; bit < 8; ++bit)
            crc = crc >> 1 ^ (crc & 1 ? 0xEDB88320u : 0u);
    }
    return ~crc;
}

void put32(std::string& out, std::uint32_t v) {
    for (int shift = 24; shift >= 0; shift -= 8)
        out += static_cast<char>(v >> shift & 255u);
}

void chunk(std::string& out, const char* kind, const std::string& body) {
    put32(out, static_cast<std::uint32_t>(body.size()));
    const std::size_t from = out.size();
    out += kind;
    out += body;
    put32(out, crc_of(out, from));
}

/// A zlib stream of stored blocks (RFC 1950, 1951).
std::string stored(const std::string& raw) {
    std::string out = "\x78\x01";
    std::uint32_t a = 1, b = 0;
    for (std::size_t at = 0; at < raw.size();) {
        const std::size_t n = std::min<std::size_t>(raw.size() - at, 65535);
        out += static_cast<char>(at + n == raw.size());
        for (const std::size_t v : {n, n ^ 65535u}) {
            out += static_cast<char>(v & 255u);
            out += static_cast<char>(v >> 8);
        }
        out.append(raw, at, n);
        at += n;
    }
    for (const char c : raw) {
        a = (a + static_cast<unsigned char>(c)) % 65521;
        b = (b + a) % 65521;
    }
    put32(out, b << 16 | a);
    return out;
}

} // namespace

void PlainPainter::paint(ImDrawList* list, const view::FieldPicture& picture) {
    jobs_.push_back(picture);
    list->AddCallback(&play_nothing, &jobs_.back());
}

Picture draw(const ImDrawData& data, ImU32 paper) {
    const ImVec2 scale = data.FramebufferScale;
    Picture picture{static_cast<int>(std::lround(data.DisplaySize.x * scale.x)),
                    static_cast<int>(std::lround(data.DisplaySize.y * scale.y)),
                    {}};
    picture.pixels.assign(static_cast<std::size_t>(picture.width * picture.height), paper);
    Raster raster(picture, scale);
    for (const ImDrawList* list : data.CmdLists)
        for (const ImDrawCmd& command : list->CmdBuffer) {
            const Clip clip = raster.clip(command.ClipRect);
            if (command.UserCallback == &play_nothing)
                raster.wash(*static_cast<view::FieldPicture*>(command.UserCallbackData), clip);
            if (command.UserCallback) continue;
            const ImDrawIdx* index = list->IdxBuffer.Data + command.IdxOffset;
            const ImDrawVert* corner = list->VtxBuffer.Data + command.VtxOffset;
            for (unsigned i = 0; i + 2 < command.ElemCount; i += 3)
                raster.triangle(corner[index[i]], corner[index[i + 1]], corner[index[i + 2]], clip);
        }
    return picture;
}

bool write_png(const Picture& picture, const std::string& path) {
    std::string raw;
    for (int y = 0; y < picture.height; ++y) {
        raw += '\0';
        for (int x = 0; x < picture.width; ++x) {
            const auto c = picture.pixels[static_cast<std::size_t>(y * picture.width + x)];
            for (const int shift : {IM_COL32_R_SHIFT, IM_COL32_G_SHIFT, IM_COL32_B_SHIFT})
                raw += static_cast<char>(c >> shift & 255u);
        }
    }
    std::string head, out = "\x89PNG\r\n\x1a\n";
    put32(head, static_cast<std::uint32_t>(picture.width));
    put32(head, static_cast<std::uint32_t>(picture.height));
    head += std::string("\x08\x02\x00\x00\x00", 5);
    chunk(out, "IHDR", head);
    chunk(out, "IDAT", stored(raw));
    chunk(out, "IEND", "");
    std::FILE* file = std::fopen(path.c_str(), "wb");
    if (!file) return false;
    const bool written = std::fwrite(out.data(), 1, out.size(), file) == out.size();
    return std::fclose(file) == 0 && written;
}

} // namespace shimlight::stage
