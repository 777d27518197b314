// SPDX-License-Identifier: MIT
// Lesson: guided demonstrations. The page lists them; one that runs has a session of its own, shown
// by the picture screens with a card of questions in place of the levers.
#pragma once

#include "house/lesson.hpp"
#include "view/layout.hpp"
#include "view/rest.hpp"
#include "view/scroll.hpp"
#include "view/session.hpp"
#include "view/views.hpp"

#include <memory>
#include <vector>

namespace shimlight::view {

/// So many of the program's own lessons, the first ones, are kept between visits once they are
/// done: by their place, so a new one goes to the end of the file.
inline constexpr std::size_t kept_lessons = 24;

class Lesson {
  public:
    /// The list; true when one was started or gone on with.
    SHIMLIGHT_REST bool draw(Ui& ui, Box box);

    /// First in a frame: a lesson that was left goes.
    void begin_frame();
    /// The lesson's own house while one runs, else nullptr.
    Session* session() { return session_.get(); }
    /// Questions instead of levers.
    bool guided() const { return session_ && !free_; }
    bool presenting() const { return present_ && guided(); }
    const house::Lesson& lesson() const { return *lessons_[running_]; }
    View view() const { return static_cast<View>(lesson().screen); }

    /// In place of the levers: question, guesses, explanation.
    SHIMLIGHT_REST void card(Ui& ui, Box box);
    /// Above the levers in free play; returns what is left for them.
    SHIMLIGHT_REST Box free_bar(Ui& ui, Box box);
    /// Today and the Remedy of the lesson's three figures, for the back row.
    SHIMLIGHT_REST void numbers(Ui& ui, Box box);
    /// Gives the card what it needs of the picture's height on a phone.
    void make_room(Layout& layout) const;

    /// Further lessons, from a file.
    void add(std::vector<house::Lesson> lessons);

  private:
    std::vector<const house::Lesson*> lessons_;
    std::vector<std::unique_ptr<house::Lesson>> opened_;
    std::vector<bool> done_; ///< since the page was opened
    std::size_t running_ = 0, step_ = 0;
    std::unique_ptr<Session> session_;
    bool free_ = false, revealed_ = false, present_ = false;
    bool leaving_ = false;                 ///< its session is in use until the frame ends
    std::vector<int> guesses_;             ///< by step; -1 shown without a guess
    std::vector<house::FigureSet> before_; ///< by step, as it was before the step's change
    Scroll list_scroll_, card_scroll_;
    float list_px_ = 0, card_px_ = 0; ///< what they needed last

    void fill_list();
    static int bit(std::size_t index);
    bool done(const Ui& ui, std::size_t index) const;
    float row(Ui& ui, std::size_t index, Box box, bool& started);
    void start(std::size_t index, Units units);
    void go(std::size_t step, bool revealed, Units units);
    void forward(Units units, int guess);
    void back(Units units);
    house::FigureSet figures() const;
    std::string words(const Ui& ui, const std::string& text, bool of_answer) const;
    float head(Ui& ui, Box box);
    float asking(Ui& ui, float x, float y, float width);
    float answering(Ui& ui, float x, float y, float width);
    void steps_row(Ui& ui, Box box);
};

} // namespace shimlight::view
