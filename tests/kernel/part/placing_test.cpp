#include "kernel/part/placing.hpp"

#include <catch2/catch.hpp>

#include "tests/support/expect.hpp"
#include "tests/support/shapes.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("a quarter turn goes anticlockwise about the part's own zero, then the shift is added") {
  const Vec2 p{3, 1}, shift{100, 50};
  CHECK(Placing{0, shift}.point(p) == Vec2(103, 51));
  CHECK(Placing{1, shift}.point(p) == Vec2(99, 53));
  CHECK(Placing{2, shift}.point(p) == Vec2(97, 49));
  CHECK(Placing{3, shift}.point(p) == Vec2(101, 47));
}

TEST_CASE("a direction is turned and not shifted") {
  for (int quarters = 0; quarters < 4; ++quarters)
    CHECK(Placing{quarters, {100, 50}}.vector({1, 0}) == Placing{quarters, {0, 0}}.point({1, 0}));
  CHECK(Placing{1, {100, 50}}.vector({1, 0}) == Vec2(0, 1));
}

TEST_CASE("quarters past a full turn begin again, backward ones go clockwise") {
  const Vec2 p{3, 1};
  for (int quarters = -8; quarters < 8; ++quarters)
    CHECK(Placing{quarters, {7, 9}}.point(p) == Placing{quarters + 4, {7, 9}}.point(p));
  CHECK(Placing{-1, {0, 0}}.point(p) == Placing{3, {0, 0}}.point(p));
}

TEST_CASE("an arc stays the same arc: radius, sense and angle to the last bit, never mirrored") {
  const Segment before = arc({20, 10}, 1 / 3.0, 15, 140);
  for (int quarters = 0; quarters < 4; ++quarters) {
    const Placing placing{quarters, {0, 0}};
    const Segment after = placing.segment(before);
    CHECK(after.radius == before.radius);
    CHECK(after.turn == before.turn);
    CHECK(after.centre == placing.vector(before.centre));
    CHECK(after.from == placing.vector(before.from));
    CHECK((after.to - after.from).norm() == within((before.to - before.from).norm(), 1e-15));
    CHECK(same(after.point(0.4), placing.point(before.point(0.4)), 1e-12));
    // Anticlockwise stays anticlockwise: a mirror would turn the sense of the two sides.
    const Vec2 a = after.from - after.centre, b = after.to - after.centre;
    const Vec2 c = before.from - before.centre, d = before.to - before.centre;
    CHECK(a.x() * b.y() - a.y() * b.x() == within(c.x() * d.y() - c.y() * d.x(), 1e-12));
  }
}

TEST_CASE("a straight line keeps its plain centre wherever it lies") {
  const Segment moved = Placing{1, {100, 50}}.segment(line({0, 0}, {10, 0}));
  CHECK(moved.straight());
  CHECK(moved.from == Vec2(100, 50));
  CHECK(moved.to == Vec2(100, 60));
  CHECK(moved.centre == Vec2(0, 0));
}
