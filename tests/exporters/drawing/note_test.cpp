#include "exporters/drawing/note.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {
const Box2 kField{{0, 0}, {200, 150}};
}

TEST_CASE("a note stands in its preferred direction when nothing is there") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  add_note(drawing, {{100, 75}, {"bed caul 35"}, 0, 8, 60}, kField);
  const auto& text = std::get<Text>(drawing.items().back().shape);
  CHECK(text.anchor == Anchor::left);
  CHECK(text.at.x() == Approx(100 + 8 + 3 + 0.9));
}

TEST_CASE("many notes on one spot keep clear of one another and of the drawing, inside the field") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  drawing.add(pens::kPart, rectangle({{90, 65}, {110, 85}}));
  drawing.add(pens::kPart, line({0, 75}, {200, 75}));
  for (int i = 0; i < 12; ++i)
    add_note(drawing, {{100, 75}, {"note " + std::to_string(i)}, 0, 8, 60}, kField);
  std::vector<Box2> boxes;
  for (const Item& item : drawing.items())
    if (const auto* text = std::get_if<Text>(&item.shape)) boxes.push_back(text_box(*text));
  REQUIRE(boxes.size() == 12);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    CHECK(within(boxes[i], kField));
    for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(overlap(boxes[i], boxes[j]));
    for (const Item& item : drawing.items())
      for (const Segment& s : strokes(item.shape)) CHECK_FALSE(touches(s, boxes[i]));
  }
}

TEST_CASE("a note turns from its way no farther than it may while there is a free place") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  drawing.add(pens::kPart, rectangle({{104, 40}, {190, 110}}));  // in the way to the right
  Note note{{100, 75}, {"bed caul 35"}, 0, 8, 60};
  note.turn = radians(30);
  note.last = 60;
  add_note(drawing, note, kField);
  const auto& leader = std::get<Path>(drawing.items()[1].shape).segments.front();
  // Nothing is free within 30 degrees to the right but inside the rectangle, across one of its lines.
  CHECK(std::abs(std::atan2(leader.tangent(0).y(), leader.tangent(0).x())) <= radians(30) + 1e-9);
  CHECK(std::get<Text>(drawing.items().back().shape).anchor == Anchor::left);
}

TEST_CASE("of several tips a note takes the one with a free place near by") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  // A grid that leaves no room for a text about the first tip.
  for (int i = 0; i < 30; ++i) {
    drawing.add(pens::kPart, line({2.0 * i, 0}, {2.0 * i, 150}));
    drawing.add(pens::kPart, line({0, 5.0 * i}, {60, 5.0 * i}));
  }
  const Note note{{20, 75}, {"top caul 16"}, 0, 8, 30};
  add_note(drawing, note, {{{20, 75}, 0}, {{120, 75}, 0}}, kField);
  CHECK(std::get<Text>(drawing.items().back().shape).at.x() == Approx(120 + 8 + 3 + 0.9));
}

TEST_CASE("a note whose tip lies on a text takes another tip") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  drawing.add(pens::kText, Text{{40, 74}, "upper former", 3.5});
  add_note(drawing, {{45, 75}, {"pack 18"}, 0, 8, 60}, {{{45, 75}, 0}, {{120, 100}, 0}}, kField);
  CHECK(std::get<Text>(drawing.items().back().shape).at.y() > 90);
}

TEST_CASE("a text inside an area is left out where there is no room") {
  Drawing drawing("test", {200, 150}, sheet_pens());
  const auto nowhere = [](const Box2&) { return false; };
  CHECK_FALSE(add_inner_text(drawing, {"former", {100, 75}, 20, 3.5}, nowhere));
  CHECK(drawing.items().empty());
}
