// SPDX-License-Identifier: MIT
// A window by what is printed on its label or a quote: the builds that have these ratings, and a
// remedy or today's window of one of them.
#pragma once

#include "assess/label.hpp"
#include "view/column.hpp"
#include "view/session.hpp"

#include <array>
#include <memory>

namespace shimlight::assess {
class LabelSearch;
}

namespace shimlight::view {

class LabelEntry {
  public:
    LabelEntry();
    ~LabelEntry();
    /// True when a remedy or today's window was made of it: time to look at it.
    bool draw(Ui& ui, Session& session, Column& column);

  private:
    bool open_ = false;
    std::array<std::string, 4> typed_; ///< U, SHGC, light, air, as they were typed
    int panes_ = 0, frame_ = 0;        ///< 0 any; else the number, the choice's index plus one
    Units units_ = Units::us;          ///< of what was typed
    std::unique_ptr<assess::LabelSearch> search_;
    bool asked_ = false; ///< the search is about what stands in the fields
    std::size_t chosen_ = 0;

    void take_units(Units units);
    assess::Label label() const;
    void fields(Ui& ui, Session& session, Column& column);
    void start();
    void look(Ui& ui, Column& column);
    void builds(Ui& ui, const assess::LabelAnswer& answer, Column& column);
    void beside(Ui& ui, const assess::LabelBuild& build, Column& column) const;
    bool make(Ui& ui, Session& session, const assess::LabelAnswer& answer, Column& column) const;
    std::string name(const assess::LabelBuild& build, bool matched) const;
};

} // namespace shimlight::view
