// SPDX-License-Identifier: MIT
// Report: a sheet an opening and one for the house, for paper and for whoever reads with the ear.
// It is made in frames: each opening is solved in full, then told in blocks, then its pictures are
// drawn by the platform (Wishes::report), and at last the page gets all of it.
#pragma once

#include "assess/site_visit.hpp"
#include "view/column.hpp"
#include "view/report_blocks.hpp"
#include "view/report_words.hpp"
#include "view/room.hpp"
#include "view/slice.hpp"

#include <memory>

namespace shimlight::view {

class Report {
  public:
    /// Its buttons and how far it is; goes one step further.
    void draw(Ui& ui, const Session& session, Column& column);

    enum class Due { nothing, picture, pages };
    /// What the platform is to do after this frame.
    Due due() const { return due_; }

    // A picture: the platform gives it a frame of its own, light, on white, and keeps what is
    // drawn.
    /// CSS px.
    ImVec2 picture_px() const;
    int picture() const { return picture_; }
    /// `keeps`: whether there will be anything to look at.
    void draw_picture(const Platform& paper, bool keeps);

    // The pages.
    const std::vector<Block>& blocks() const { return blocks_; }
    /// Id of the button that asked for it.
    const std::string& asked_by() const { return asked_by_; }
    /// They are shown.
    void shown();

    static constexpr float paper_dpr = 2.5f; ///< 280 px an inch of paper

  private:
    enum class Step { none, solve, visits, advise, write, slice, room, house };

    Step step_ = Step::none;
    Due due_ = Due::nothing;
    std::string asked_by_;
    std::vector<int> openings_; ///< to be told
    std::size_t now_ = 0;
    int revision_ = 0;                 ///< of the house that was asked about; a change ends it
    std::unique_ptr<Session> session_; ///< of its own, one opening after another
    assess::SiteVisit before_, after_;
    assess::Cheapest cheapest_;
    std::vector<Block> blocks_;
    std::vector<OpeningSum> sums_;
    int picture_ = 0;
    std::size_t figure_at_ = 0; ///< block of the picture that is due
    RoomView room_;
    Slice slice_;

    void begin(const Session& session, std::vector<int> openings, std::string asked_by);
    void begin_opening();
    void go_on(Units units);
    void write(Units units);
    void next_figure();
};

} // namespace shimlight::view
