// SPDX-License-Identifier: MIT
// Whether this device draws a film in time. Where it does not (an old phone, drawing without a
// graphics card), moving air would only keep the page from answering: it is shown at rest.
#pragma once

#include <algorithm>

namespace shimlight::app {

class FilmPace {
  public:
    explicit FilmPace(bool held) : held_(held) {}
    void begin(double now_s) {
        const bool late = film_before_ && now_s - begun_s_ > longest_s;
        begun_s_ = now_s;
        if (film_before_) late_ = late ? late_ + 1 : std::max(0, late_ - 1);
        if (late_ >= most_late) held_ = true;
    }
    /// `film` when the next frame is wanted for a film alone.
    void drawn(bool film) { film_before_ = film; }
    bool held() const { return held_; }

  private:
    static constexpr double longest_s = 0.05; ///< below 20 a second it stutters (common practice)
    static constexpr int most_late = 8;       ///< more than in time: one is late by another's doing
    double begun_s_ = 0;
    int late_ = 0;
    bool film_before_ = false, held_;
};

} // namespace shimlight::app
