#include "exporters/drawing/clip.hpp"

#include <catch2/catch.hpp>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

const Box2 kBox{{0, 0}, {40, 30}};

double length_of(const std::vector<Segment>& pieces) {
  double sum = 0;
  for (const Segment& s : pieces) sum += s.length();
  return sum;
}

}  // namespace

TEST_CASE("a line is cut where it enters and leaves the box and keeps its direction") {
  const auto pieces = clipped(line({-10, 15}, {50, 15}), kBox);
  REQUIRE(pieces.size() == 1);
  CHECK(same(pieces[0].from, {0, 15}));
  CHECK(same(pieces[0].to, {40, 15}));
}

TEST_CASE("what misses the box or only touches a corner gives no piece, what lies in it stays as it is") {
  CHECK(clipped(line({-10, 40}, {50, 40}), kBox).empty());
  CHECK(clipped(line({-10, 10}, {10, -10}), kBox).empty());
  const auto whole = clipped(line({1, 2}, {30, 20}), kBox);
  REQUIRE(whole.size() == 1);
  CHECK(whole[0].to == Vec2(30, 20));
}

TEST_CASE("a line along the box's edge is inside") {
  CHECK(length_of(clipped(line({-5, 30}, {45, 30}), kBox)) == within(40, kRounding));
}

TEST_CASE("an arc is cut into the arcs inside") {
  // Radius 25 about (20, 0), half a turn over the box: it stands out left and right (x < 0, x > 40), where
  // cos a = 0.8, so what stays is the middle 180 - 2 acos 0.8 degrees.
  const Segment arc{{45, 0}, {-5, 0}, kPi, {20, 0}, 25};
  const auto pieces = clipped(arc, kBox);
  REQUIRE(pieces.size() == 1);
  CHECK(same(pieces[0].from, {40, 15}));
  CHECK(same(pieces[0].to, {0, 15}));
  CHECK(pieces[0].turn == within(kPi - 2 * std::acos(0.8), kRounding));
  CHECK(pieces[0].radius == 25);
  CHECK(pieces[0].centre == Vec2(20, 0));
}

TEST_CASE("an arc that leaves the box and comes back is two arcs, whichever way it runs") {
  // Radius 25 about (20, 10): above y = 30 where sin a > 0.8.
  const Segment arc{{20 + 20, 10 + 15}, {20 - 20, 10 + 15}, kPi - 2 * std::asin(0.6), {20, 10}, 25};
  for (const Segment& way : {arc, arc.reversed()}) {
    const auto pieces = clipped(way, kBox);
    REQUIRE(pieces.size() == 2);
    CHECK(length_of(pieces) == within(2 * 25 * (std::asin(0.8) - std::asin(0.6)), kRounding));
    CHECK(same(pieces[0].from, way.from));
    CHECK(same(pieces[1].to, way.to));
  }
}

TEST_CASE("four boxes that meet share out any line or arc without loss") {
  auto next = [state = 12345u]() mutable { return (state = state * 1664525u + 1013904223u) / 4294967296.0; };
  int cut = 0;
  for (int i = 0; i < 400; ++i) {
    const Vec2 centre{80 * next() - 40, 80 * next() - 40};
    const double radius = 1 + 35 * next(), start = 2 * kPi * next(),
                 turn = (next() < 0.5 ? -1 : 1) * 6.2 * next();
    const Segment arc{centre + radius * direction(start), centre + radius * direction(start + turn), turn,
                      centre, radius};
    const Segment chord = line(arc.from, arc.to);
    for (const Segment& s : {arc, chord}) {
      double sum = 0;
      std::size_t pieces = 0;
      for (const double x : {-80.0, 0.0})
        for (const double y : {-80.0, 0.0}) {
          const auto got = clipped(s, {{x, y}, {x + 80, y + 80}});
          for (const Segment& piece : got) {
            CHECK((piece.point(0.5).array() >= Eigen::Array2d(x, y) - 1e-6).all());
            CHECK((piece.point(0.5).array() <= Eigen::Array2d(x + 80, y + 80) + 1e-6).all());
          }
          sum += length_of(got);
          pieces += got.size();
        }
      // A piece shorter than 1e-6 may be dropped at each of up to eight meetings.
      CHECK(sum == within(s.length(), 1e-5));
      cut += pieces > 1 ? 1 : 0;
    }
  }
  CHECK(cut > 200);
}

TEST_CASE("a closed path inside stays closed; cut, its pieces hang together as they ran") {
  const Path square = rectangle({{10, 10}, {20, 20}}, "#ff0000");
  const auto whole = clipped(square, kBox);
  REQUIRE(whole.size() == 1);
  CHECK(whole[0].closed);
  CHECK(whole[0].fill.empty());

  const auto cut =
      clipped(rectangle({{10, 10}, {60, 20}}), kBox);  // begins at (10, 10): out right and back in
  REQUIRE(cut.size() == 2);
  CHECK_FALSE(cut[0].closed);
  CHECK(cut[0].segments.size() == 1);
  CHECK(cut[1].segments.size() == 2);
  CHECK(same(cut[1].segments.front().from, {40, 20}));
  CHECK(same(cut[1].segments.back().to, {10, 10}));
}
