#include "exporters/drawing/doubled.hpp"

#include <catch2/catch.hpp>

#include "shared/units.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

std::vector<Pen> pens() { return {{"OUTLINE", 0.25, {}, "#000000"}, {"MARK", 0.25, {}, "#b0641e"}}; }

std::size_t doubled(const std::vector<Shape>& shapes) {
  Drawing drawing("sample", {100, 100}, pens());
  for (const Shape& shape : shapes) drawing.add("OUTLINE", shape);
  return doubled_lines(drawing).size();
}

Segment arc(const Vec2& centre, double radius, double from, double turn) {
  const auto at = [&](double angle) { return Vec2(centre + radius * direction(radians(angle))); };
  return {at(from), at(from + turn), radians(turn), centre, radius};
}

}  // namespace

TEST_CASE("equal lines are doubled, whichever way they run") {
  CHECK(doubled({line({0, 0}, {50, 0}), line({0, 0}, {50, 0})}) == 1);
  CHECK(doubled({line({0, 0}, {50, 0}), line({50, 0}, {0, 0})}) == 1);
  CHECK(doubled({line({0, 0}, {50, 0}), line({50, 0.005}, {0, 0.005})}) == 1);
}

TEST_CASE("collinear lines are doubled as far as they overlap") {
  CHECK(doubled({line({0, 0}, {50, 0}), line({49, 0}, {90, 0})}) == 1);
  CHECK(doubled({line({0, 0}, {50, 0}), line({50, 0}, {90, 0})}) == 0);
  CHECK(doubled({line({0, 0}, {50, 0}), line({10, 0}, {20, 0})}) == 1);
}

TEST_CASE("lines side by side and lines that cross are not doubled") {
  CHECK(doubled({line({0, 0}, {50, 0}), line({0, 0.02}, {50, 0.02})}) == 0);
  CHECK(doubled({line({0, 0}, {50, 0}), line({0, -5}, {50, 5})}) == 0);
}

TEST_CASE("arcs on one circle are doubled where their sweeps overlap, across the angle of 180 too") {
  CHECK(doubled({arc({0, 0}, 20, 0, 90), arc({0, 0}, 20, 80, 90)}) == 1);
  CHECK(doubled({arc({0, 0}, 20, 0, 90), arc({0, 0}, 20, 90, 90)}) == 0);
  CHECK(doubled({arc({0, 0}, 20, 170, 40), arc({0, 0}, 20, 200, 40).reversed()}) == 1);
  CHECK(doubled({arc({0, 0}, 20, -10, 20), arc({0, 0}, 20, 345, 10)}) == 1);
}

TEST_CASE("a circle is doubled by itself, not by one that is larger or one that it touches") {
  const Circle circle{{30, 30}, 10, {}};
  CHECK(doubled({circle}) == 0);
  CHECK(doubled({circle, circle}) == 2);  // by halves
  CHECK(doubled({circle, Circle{{30, 30}, 10.1, {}}}) == 0);
  CHECK(doubled({circle, Circle{{50, 30}, 10, {}}}) == 0);
}

TEST_CASE("a shallow arc along a line is doubled when it leaves it by less than a hundredth") {
  // Sagitta of an arc of 10 on radius R: 10^2 / 8 R.
  const auto along = [](double radius) { return arc({0, radius}, radius, 270, degrees(10 / radius)); };
  CHECK(doubled({line({-20, 0}, {20, 0}), along(10000)}) == 1);
  CHECK(doubled({line({-20, 0}, {20, 0}), along(100)}) == 0);
}

TEST_CASE("neighbours in an outline that run on tangent are not doubled") {
  CHECK(doubled({Path{{line({-90, 0}, {0, 0}), arc({0, 900}, 900, 270, 6)}, false, {}}}) == 0);
}

TEST_CASE("lines of different layers may lie on one another") {
  Drawing drawing("sample", {100, 100}, pens());
  drawing.add("OUTLINE", line({0, 0}, {50, 0}));
  drawing.add("MARK", line({0, 0}, {50, 0}));
  CHECK(doubled_lines(drawing).empty());
}

TEST_CASE("what is doubled is named with its layer") {
  Drawing drawing("sample", {100, 100}, pens());
  for (int i = 0; i < 2; ++i) drawing.add("MARK", line({0, 0}, {50, 0}));
  const auto found = doubled_lines(drawing);
  REQUIRE(found.size() == 1);
  CHECK(found[0].layer == "MARK");
}
