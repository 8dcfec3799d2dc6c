#include "exporters/drawing/stroke_notation.hpp"

#include <catch2/catch.hpp>

#include "shared/error.hpp"
#include "shared/units.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

std::vector<Segment> only(std::string_view notation) {
  const auto strokes = strokes_of(notation);
  REQUIRE(strokes.size() == 1);
  return strokes.front().segments;
}

// Rounding of figures up to 100 in a few steps.
constexpr double kRounding = 1e-12;

void check_smooth(const std::vector<Segment>& pieces) {
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    CHECK(pieces[i - 1].to == pieces[i].from);
    CHECK((pieces[i - 1].tangent(1) - pieces[i].tangent(0)).norm() < kRounding);
  }
}

}  // namespace

TEST_CASE("strokes are parted by semicolons, a dot is a circle") {
  const auto strokes = strokes_of("0,0 10,0 10,-2.5; .5,7");
  REQUIRE(strokes.size() == 2);
  CHECK(strokes[0].segments.size() == 2);
  CHECK(strokes[0].segments[1].to == Vec2(10, -2.5));
  REQUIRE(strokes[1].segments.size() == 2);
  CHECK(strokes[1].segments[0].centre == Vec2(5, 7));
  CHECK(strokes[1].segments[0].from == strokes[1].segments[1].to);
  CHECK(strokes_of("").empty());
}

TEST_CASE("a quarter with equal legs is one arc, else two that touch") {
  const auto round = only("20,0 v0,20");
  REQUIRE(round.size() == 1);
  CHECK(round[0].centre.norm() < kRounding);
  CHECK(round[0].turn == Approx(kPi / 2));
  for (const char* oval : {"30,100 h0,50 v30,0 h60,50 v30,100", "0,20 v50,40 h100,20 v50,0 h0,20"}) {
    const auto pieces = only(oval);
    CHECK(pieces.size() == 8);
    check_smooth(pieces);
    double turn = 0;
    for (const Segment& s : pieces) turn += std::abs(s.turn);
    CHECK(turn == Approx(2 * kPi));
  }
}

TEST_CASE("arcs arrive level or upright, or go on as the piece before") {
  CHECK(only("0,0 l30,10")[0].tangent(1).y() == Approx(0).margin(kRounding));
  CHECK(only("0,0 u10,30")[0].tangent(1).x() == Approx(0).margin(kRounding));
  check_smooth(only("0,0 10,0 t20,10"));
  CHECK(only("0,0 a180:10,0")[0].radius == Approx(5));
  CHECK(only("0,0 a180:10,0")[0].point(0.5).y() == Approx(-5));  // anticlockwise: below, going right
}

TEST_CASE("a turn goes on until its aim lies ahead, a swerve arrives as it left") {
  // Heading up, turning right on radius 10 about (10, 10), down to (20, 0): the tangent there is the aim's.
  const auto turn = only("0,0 0,10 o10:20,0");
  REQUIRE(turn.size() == 3);
  check_smooth(turn);
  CHECK((turn[1].centre - Vec2(10, 10)).norm() < kRounding);
  CHECK((turn[1].to - Vec2(20, 10)).norm() < kRounding);
  const auto swerve = only("0,10 0,0 s5:20,-30");
  REQUIRE(swerve.size() == 4);
  check_smooth(swerve);
  CHECK((swerve.front().tangent(0) - swerve.back().tangent(1)).norm() < kRounding);
  CHECK(swerve[1].radius == Approx(5));
  CHECK(swerve[3].radius == Approx(5));
}

TEST_CASE("a text that is no stroke is refused") {
  for (const char* fault : {"0", "0;0", "0,0 x1,1", "0,0 a90,1,1", "0,0 t1,1", "0,0 0,1 o5:1,1", "a,b"}) {
    INFO(fault);
    CHECK_THROWS_AS(strokes_of(fault), Error);
  }
}
