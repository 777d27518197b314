// SPDX-License-Identifier: MIT
#include "view/report.hpp"

#include "assess/words.hpp"
#include "house/materials.hpp"
#include "view/readings.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr ImVec2 slice_px{816, 340}, room_px{816, 245};
constexpr float gap_px = 14, between_px = 10;

/// Black on white; the same inks as on a light screen where they hold on paper.
Theme paper_theme() {
    Theme t = theme(false);
    t.paper = t.card = IM_COL32_WHITE;
    t.ink = t.outline = IM_COL32_BLACK;
    t.soft = IM_COL32(64, 64, 64, 255);
    t.rule = IM_COL32(150, 150, 150, 255);
    t.outdoor_air = IM_COL32(238, 242, 245, 255);
    t.indoor_air = IM_COL32_WHITE;
    t.halo = IM_COL32(255, 255, 255, 225);
    return t;
}

} // namespace

void Report::begin(const Session& session, std::vector<int> openings, std::string asked_by) {
    openings_ = std::move(openings);
    asked_by_ = std::move(asked_by);
    session_ = std::make_unique<Session>(session.house());
    session_->heat_lines = session.heat_lines;
    revision_ = session.revision();
    now_ = 0;
    picture_ = 0;
    blocks_.clear();
    sums_.clear();
    begin_opening();
}

void Report::begin_opening() {
    house::House house = session_->house();
    house.selected = openings_[now_];
    session_->load(std::move(house));
    before_ = after_ = {};
    step_ = Step::solve;
}

/// At most a section a call, but for the advice.
void Report::go_on(Units units) {
    Session& s = *session_;
    const bool us = units == Units::us;
    if (step_ == Step::solve) {
        assess::Budget budget;
        budget.max_solves = 1;
        if (s.assess(budget, true)) return;
        before_.ask(s.today(), site_readings(s, false), us);
        after_.ask(s.has_remedy() ? s.remedy() : s.today(), site_readings(s, true), us);
        step_ = Step::visits;
    } else if (step_ == Step::visits) {
        if (before_.step() && after_.step()) step_ = Step::advise;
    } else if (step_ == Step::advise) {
        const opening::Case today = s.today();
        const auto& answers = s.record().answers;
        const assess::FindOut found = assess::find_out(s.today_result().seat.share, answers);
        const assess::PlanQuestion question{today, s.today_result(), s.record().remedies,
                                            s.house().hour,
                                            answers.empty() ? nullptr : &found.share};
        cheapest_ = assess::cheapest_plan(question, house::plans(s.house(), s.record(), question));
        step_ = Step::write;
    } else if (step_ == Step::write) {
        write(units);
    }
}

void Report::write(Units units) {
    Writer out(blocks_);
    figure_at_ = blocks_.size();
    const bool alone = asked_by_ == "report.opening";
    write_opening(out, {*session_, before_, after_, cheapest_, units}, picture_,
                  alone ? session_->house().name : std::string());
    sums_.push_back(sum_of(*session_));
    slice_.position = coldest_cut(session_->today_result());
    step_ = Step::slice;
    next_figure();
}

/// The next figure whose picture is to be drawn.
void Report::next_figure() {
    while (blocks_[figure_at_].kind != Block::Kind::figure ||
           blocks_[figure_at_].picture != picture_)
        ++figure_at_;
    due_ = Due::picture;
}

ImVec2 Report::picture_px() const {
    return step_ == Step::slice ? slice_px : room_px;
}

void Report::draw_picture(const Platform& paper, bool keeps) {
    static const Theme on_paper = paper_theme();
    Wishes wishes;
    Gesture gesture;
    Overlay overlay;
    const ImVec2 size = picture_px();
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(size);
    ImGui::Begin("paper", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoInputs |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground);
    const Box box{0, 0, size.x, size.y};
    Ui ui{paper,
          wishes,
          on_paper,
          *paper.mirror,
          ImGui::GetWindowDrawList(),
          gesture,
          overlay,
          session_->house().units,
          "",
          box};
    ui.paper = true;
    if (step_ == Step::slice)
        slice_.draw_paper(ui, *session_, box);
    else
        room_.draw_paper(ui, *session_, box);
    ImGui::End();
    Block& figure = blocks_[figure_at_];
    for (const MirrorNode& node : paper.mirror->nodes())
        if (node.role == Role::image) figure.told += (figure.told.empty() ? "" : " ") + node.value;
    if (!keeps) figure.picture = -1;
    due_ = Due::nothing;
    ++picture_;
    if (step_ == Step::slice) {
        step_ = Step::room;
        next_figure();
    } else if (++now_ < openings_.size()) {
        begin_opening();
    } else {
        due_ = Due::pages;
        step_ = Step::house;
        if (asked_by_ != "report.house") return;
        std::vector<Block> first;
        Writer out(first);
        write_house(out, session_->house(), sums_);
        blocks_.insert(blocks_.begin(), first.begin(), first.end());
    }
}

void Report::shown() {
    step_ = Step::none;
    due_ = Due::nothing;
    session_.reset();
    blocks_.clear();
}

void Report::draw(Ui& ui, const Session& session, Column& column) {
    if (step_ != Step::none && revision_ != session.revision()) shown();
    column.heading("house.report", "Report");
    const Box line = column.take(touch_px);
    const float half = (line.w - between_px) / 2;
    ButtonStyle style;
    style.enabled = step_ == Step::none;
    style.spoken = "Report of the whole house";
    style.help = "Pages to print: what was found, what it costs, what to take care of";
    if (button(ui, "report.house", {line.x, line.y, half, line.h}, "The whole house", style)) {
        std::vector<int> all;
        for (int i = 0; i < static_cast<int>(session.house().openings.size()); ++i)
            all.push_back(i);
        begin(session, std::move(all), "report.house");
    }
    style.spoken = "Report of this opening";
    if (button(ui, "report.opening", {line.x + half + between_px, line.y, half, line.h},
               "This opening", style))
        begin(session, {session.house().selected}, "report.opening");
    if (step_ != Step::none) {
        column.sentence("report.wait", "Report",
                        assess::fill("Preparing {0}, opening {1} of {2} …",
                                     {name_of(session_->record()), std::to_string(now_ + 1),
                                      std::to_string(openings_.size())}),
                        ui.theme.soft);
        if (due_ == Due::nothing) go_on(ui.units);
        if (due_ != Due::nothing) ui.wishes.report = this;
        ui.wishes.another_frame = true;
    }
    column.space(gap_px);
}

} // namespace shimlight::view
