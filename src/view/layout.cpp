// SPDX-License-Identifier: MIT
#include "view/layout.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float lever_panel_px = 344;
constexpr float views_px = 52;
constexpr float most_views_px = 690;
constexpr float wide_top_px = 60;
constexpr float narrow_strip_px = 92;
constexpr float least_verdict_px = touch_px - 12; // a finger opens it
constexpr float wide_strip_px = 84;
constexpr float low_px = 480; ///< a phone on its side, or a desktop at twice the size
constexpr float low_panel_share = 0.45f, wide_panel_share = 0.42f;
constexpr float least_picture_px = 180;
constexpr float least_levers_px = 140; // the remedy and one lever
// A phone with larger text: one lever, and the remedy by scrolling; nothing between the rows.
constexpr float high_phone_px = 740;   ///< has room for the whole verdict
constexpr float told_picture_px = 130; ///< with less picture the verdict gives way to it
constexpr float short_px = 450, short_levers_px = 92, short_picture_px = 110;
constexpr float shortest_px = 400, one_lever_px = 80; ///< there the picture needs the rest
constexpr float saved_views_px = 6, saved_strip_px = 4, saved_verdict_px = 3;

Box safe_area(const Platform& p) {
    return {p.safe_left, p.safe_top, p.width_px - p.safe_left - p.safe_right,
            p.height_px - p.safe_top - p.safe_bottom};
}

bool is_low(const Platform& p) {
    return is_wide(p) && p.height_px < low_px;
}

float panel_px(const Platform& p) {
    return std::min(lever_panel_px,
                    safe_area(p).w * (is_low(p) ? low_panel_share : wide_panel_share));
}

float verdict_box_px(float verdict_px) {
    return std::max(verdict_px, least_verdict_px) + 14;
}

/// The picture has the whole height below the views; all else stands beside it.
Layout arrange_low(const Box& all, float panel, float verdict_px, Middle middle) {
    Layout l;
    l.wide = true;
    const Box left{all.x, all.y, all.w - panel, all.h};
    l.views = {left.x, left.y, left.w, views_px};
    l.top = {left.right(), all.y, panel, touch_px};
    l.picture = {left.x, l.views.bottom(), left.w, left.h - l.views.h};
    l.page = {left.x, l.picture.y, middle == Middle::page ? left.w : all.w, l.picture.h};
    l.strip = {l.top.x + 12, l.top.bottom(), panel - 24, narrow_strip_px - saved_strip_px};
    l.verdict = {l.strip.x, l.strip.bottom(), l.strip.w,
                 verdict_px > 0 ? verdict_box_px(verdict_px) : 0};
    l.levers = {left.right(), l.verdict.bottom() + 4, panel, all.bottom() - l.verdict.bottom() - 4};
    return l;
}

Layout arrange_wide(const Box& all, float panel, float verdict_px, Middle middle) {
    Layout l;
    l.wide = l.side_by_side = l.one_row = true;
    const Box left{all.x, all.y, all.w - panel, all.h};
    l.roomy = left.w >= 640;
    l.top = {left.x, left.y, std::max(left.w * 0.42f, left.w - most_views_px), wide_top_px};
    l.views = {l.top.right(), left.y + 4, left.right() - l.top.right() - margin_px,
               wide_top_px - 8};
    l.levers = {left.right(), all.y, panel, all.h};
    const float below = wide_strip_px + verdict_px + 3 * 10;
    l.picture = {left.x, left.y + wide_top_px, left.w, left.h - wide_top_px - below - 8};
    l.strip = {left.x + margin_px, l.picture.bottom() + 10, left.w - 2 * margin_px,
               below - verdict_px - 20};
    l.verdict = {l.strip.x, l.strip.bottom() + 2, l.strip.w, verdict_px + 10};
    if (middle == Middle::picture) return l;
    const float bottom = middle == Middle::page ? l.strip.y - 6 : all.bottom();
    l.page = {left.x, left.y + wide_top_px, all.w, bottom - left.y - wide_top_px};
    l.strip.w = l.verdict.w = all.w - 2 * margin_px;
    return l;
}

Layout arrange_narrow(const Box& all, float verdict_px, Middle middle) {
    Layout l;
    l.roomy = l.one_row = all.w >= 600;
    const bool is_short = all.h - touch_px - views_px < short_px;
    const float tight = is_short ? 1 : 0;
    const float strip = l.roomy ? wide_strip_px : narrow_strip_px - tight * saved_strip_px;
    const float views = views_px - tight * saved_views_px;
    l.top = {all.x, all.y, all.w, touch_px};
    l.views = {all.x, all.bottom() - views, all.w, views};
    const float between = all.h - l.top.h - views;
    const float verdict =
        verdict_px > 0 ? verdict_box_px(verdict_px) - tight * saved_verdict_px : 16;
    const float levers =
        between < shortest_px
            ? one_lever_px
            : std::max(is_short ? short_levers_px : least_levers_px, between * 0.26f);
    const float picture = std::max(is_short ? short_picture_px : least_picture_px,
                                   between - strip - verdict - levers);
    l.picture = {all.x, l.top.bottom(), all.w, picture};
    l.strip = {all.x + 12, l.picture.bottom() + 2, all.w - 24, strip};
    l.verdict = {all.x + 12, l.strip.bottom(), all.w - 24, verdict};
    l.levers = {all.x, l.verdict.bottom() + 4, all.w, l.views.y - l.verdict.bottom() - 4};
    if (middle == Middle::picture && picture < told_picture_px) { // the pages tell it
        l.picture.h += verdict;
        l.strip.y += verdict;
        l.verdict.y += verdict;
        l.verdict.h = 0;
    }
    if (middle == Middle::picture) return l;
    if (middle == Middle::page) {
        l.verdict.y = l.views.y - verdict - 4;
        l.strip.y = l.verdict.y - strip;
    }
    const float bottom = middle == Middle::page ? l.strip.y - 4 : l.views.y;
    l.page = {all.x, l.top.bottom(), all.w, bottom - l.top.bottom()};
    return l;
}

} // namespace

bool is_wide(const Platform& p) {
    return p.width_px >= wide_from_px || (p.width_px > p.height_px && p.width_px >= 560);
}

bool is_narrow(const Platform& p) {
    return p.width_px < 480;
}

bool is_phone(const Platform& p) {
    return is_narrow(p) || is_low(p);
}

float verdict_width(const Platform& platform) {
    const Box all = safe_area(platform);
    if (is_low(platform)) return panel_px(platform) - 24 - 24;
    if (!is_wide(platform)) return all.w - 24 - 24;
    return all.w - panel_px(platform) - 2 * margin_px - 24;
}

float most_verdict_px(const Platform& p, float line_px, Middle middle) {
    if (is_low(p) && middle == Middle::picture) return 2 * line_px;
    if (is_wide(p)) return 1e6f;
    return line_px * (is_narrow(p) && p.height_px < high_phone_px ? 2.0f : 4.0f);
}

Layout arrange_presenting(const Platform& platform) {
    const Box all = safe_area(platform);
    Layout l;
    l.wide = l.side_by_side = is_wide(platform);
    constexpr float numbers_px = 76;
    const float picture_w = l.wide ? all.w * 0.6f : all.w;
    const float picture_h = l.wide ? all.h - numbers_px : all.h * 0.4f;
    l.picture = {all.x, all.y, picture_w, picture_h};
    l.strip = {all.x, l.picture.bottom(), picture_w, numbers_px};
    l.levers = l.wide ? Box{l.picture.right(), all.y, all.w - picture_w, all.h}
                      : Box{all.x, l.strip.bottom(), all.w, all.bottom() - l.strip.bottom()};
    return l;
}

Layout arrange(const Platform& platform, float verdict_px, Middle middle) {
    const Box all = safe_area(platform);
    if (!is_wide(platform)) return arrange_narrow(all, verdict_px, middle);
    const float panel = panel_px(platform);
    if (!is_low(platform)) return arrange_wide(all, panel, verdict_px, middle);
    Layout l = arrange_low(all, panel, verdict_px, middle);
    l.side_by_side = platform.width_px >= wide_from_px;
    return l;
}

} // namespace shimlight::view
