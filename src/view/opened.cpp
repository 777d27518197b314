// SPDX-License-Identifier: MIT
#include "view/opened.hpp"

#include "house/link.hpp"
#include "view/library.hpp"

namespace shimlight::view {

void open_link(Session& session, const std::string& text) {
    const auto came = house::from_json(text);
    const auto house = ok(came) ? house::joined(session.house(), value(came).house)
                                : Result<house::House>(problem(came));
    if (!ok(house)) {
        session.message =
            "The link was not opened and nothing was changed: " + problem(house).message;
        return;
    }
    session.edit(value(house));
    session.message = "The opening of the link stands in this house now, with this house's "
                      "weather and prices. Undo takes it out again.";
}

void open_house(Ui& ui, Session& session, const std::string& text) {
    auto opened = house::from_json(text);
    if (!ok(opened)) {
        const Problem& p = problem(opened);
        session.message = "The file was not opened and nothing was changed. At " +
                          (p.path.empty() ? std::string("the start") : p.path) + ": " + p.message;
        return;
    }
    open_beside(ui, session, std::move(value(opened).house));
    session.message.clear();
    for (const std::string& line : value(opened).notes)
        session.message += (session.message.empty() ? "" : " ") + line;
}

} // namespace shimlight::view
