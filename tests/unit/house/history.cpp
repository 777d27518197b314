// SPDX-License-Identifier: MIT
#include "house/history.hpp"

#include <doctest/doctest.h>

using namespace shimlight::house;

namespace {

House named(const std::string& name) {
    House house;
    house.name = name;
    return house;
}

} // namespace

TEST_CASE("A fresh history has nothing to undo or redo") {
    History history(named("a"));
    CHECK_FALSE(history.can_undo());
    CHECK_FALSE(history.can_redo());
    history.undo();
    history.redo();
    CHECK(history.now().name == "a");
}

TEST_CASE("Every change without a gesture is a step of its own") {
    History history(named("a"));
    history.change(named("b"), "");
    history.change(named("c"), "");
    history.undo();
    CHECK(history.now().name == "b");
    history.undo();
    CHECK(history.now().name == "a");
    CHECK_FALSE(history.can_undo());
    history.redo();
    history.redo();
    CHECK(history.now().name == "c");
    CHECK_FALSE(history.can_redo());
}

TEST_CASE("A drag is one step") {
    History history(named("a"));
    for (int i = 0; i < 50; ++i)
        history.change(named(std::to_string(i)), "wind");
    CHECK(history.now().name == "49");
    history.undo();
    CHECK(history.now().name == "a");
}

TEST_CASE("Another lever begins another step") {
    History history(named("a"));
    history.change(named("b"), "wind");
    history.change(named("c"), "rh");
    history.change(named("d"), "rh");
    history.undo();
    CHECK(history.now().name == "b");
}

TEST_CASE("The same lever after settling begins another step") {
    History history(named("a"));
    history.change(named("b"), "wind");
    history.settle();
    history.change(named("c"), "wind");
    history.undo();
    CHECK(history.now().name == "b");
}

TEST_CASE("After an undo the same gesture does not overwrite the past") {
    History history(named("a"));
    history.change(named("b"), "wind");
    history.undo();
    history.change(named("c"), "wind");
    CHECK_FALSE(history.can_redo());
    history.undo();
    CHECK(history.now().name == "a");
}

TEST_CASE("A change forgets what was undone") {
    History history(named("a"));
    history.change(named("b"), "");
    history.change(named("c"), "");
    history.undo();
    history.undo();
    history.change(named("d"), "");
    CHECK_FALSE(history.can_redo());
    CHECK(history.now().name == "d");
    history.undo();
    CHECK(history.now().name == "a");
}

TEST_CASE("The oldest steps are dropped, the present stays") {
    constexpr int more_than_kept = 500;
    History history(named("start"));
    for (int i = 0; i < more_than_kept; ++i)
        history.change(named(std::to_string(i)), "");
    CHECK(history.now().name == "499");
    int steps = 0;
    while (history.can_undo())
        history.undo(), ++steps;
    CHECK(steps == 199);
    CHECK(history.now().name == "300");
    for (int i = 0; i < steps; ++i)
        history.redo();
    CHECK(history.now().name == "499");
}
