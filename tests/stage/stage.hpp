// SPDX-License-Identifier: MIT
// Plays the part of the platform: frames, fonts, fingers, presses through the mirror.
#pragma once

#include "stage/picture.hpp"
#include "view/report.hpp"
#include "view/screen.hpp"

namespace shimlight::stage {

struct Size {
    float width_px = 360, height_px = 640;
    bool dark = false, reduced_motion = true;
    float dpr = 1;
    int text = 0; ///< index of view::text_scales
    int lessons_done = 0;
};

class Stage {
  public:
    explicit Stage(Size size, house::House start = house::demo_house());
    ~Stage();
    Stage(const Stage&) = delete;
    Stage& operator=(const Stage&) = delete;

    /// Draws until nothing changes any more; false when that never comes.
    bool rest();
    /// One frame with these mirror events; whether another is wanted.
    bool frame(std::vector<view::MirrorEvent> events = {});
    /// As the mirror does it; each comes to rest.
    void press(const std::string& id);
    void set_number(const std::string& id, double value);
    void type(const std::string& id, const std::string& words);
    /// A finger (mouse button) down at the first point, along the others, and up.
    void drag(const std::vector<ImVec2>& way);
    void tap(ImVec2 at) { drag({at}); }
    /// Another kept house, as the page puts it on the screen.
    void load(house::House house) { screen_.load(std::move(house)); }

    bool touch = false; ///< the pointer is a finger
    view::Shelf shelf;  ///< keeps nothing unless told
    const view::MirrorNode* node(const std::string& id) const;
    const view::Mirror& mirror() const { return mirror_; }
    const view::Screen& screen() const { return screen_; }
    const view::Wishes& wishes() const { return wishes_; }
    double time_s() const { return time_s_; }
    Picture picture() const;
    /// The last report that was asked for, and how many pictures it had.
    const std::vector<view::Block>& report() const { return report_; }
    int report_pictures() const { return report_pictures_; }
    /// Keeps a report's pictures as PREFIX-0.png and so on, in the sharpness of paper.
    std::string keep_report;
    /// Whether Inter is there to draw with.
    static bool has_type();

  private:
    void act(view::MirrorEvent event);
    void serve(view::Report& report);
    void draw_for(view::Report& report);

    Size size_;
    view::Screen screen_;
    view::Mirror mirror_;
    view::Fonts fonts_;
    view::Wishes wishes_;
    bool refining_ = false; ///< sections are solved between frames, as the page does it
    PlainPainter painter_;
    double time_s_ = 100;
    ImGuiContext* paper_ = nullptr; ///< of a report's pictures
    view::Fonts paper_fonts_;
    std::vector<view::Block> report_;
    int report_pictures_ = 0;
};

} // namespace shimlight::stage
