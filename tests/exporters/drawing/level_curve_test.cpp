// A profile laid with its chord level.
#include "exporters/drawing/level_curve.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/one_two_five.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

TEST_CASE("a level curve has its chord level and its points where they were beside it") {
  std::size_t seen = 0;
  for (const NamedProfile& named : named_profiles()) {
    CAPTURE(named.name);
    const Profile tilted = named.profile.posed({{130, -70}, 2.1});
    const LevelCurve curve(tilted);
    REQUIRE(curve.open());
    const Vec2 from = curve.profile().start().point, to = curve.profile().end().point;
    CHECK(same(Vec2(from + to), Vec2(0, 0)));
    CHECK(to.x() - from.x() == test::within(curve.chord(), kRounding));
    for (const double share : {0.0, 0.3, 0.7, 1.0}) {
      const double s = share * tilted.girth();
      const Vec2 beside = tilted.point(s) + 5 * tilted.at(s).normal();
      CHECK(same(curve.placed(beside), curve.profile().point(s) + 5 * curve.profile().at(s).normal()));
    }
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("the rise is the greatest distance from the chord, on whichever side") {
  std::size_t seen = 0;
  for (const NamedProfile& named : named_profiles()) {
    CAPTURE(named.name);
    const LevelCurve curve(named.profile);
    double most = 0;
    for (int i = 0; i <= 2000; ++i)
      most = std::max(most, std::abs(curve.profile().point(named.profile.girth() * i / 2000).y()));
    // A step of girth / 2000 misses the top of the sharpest bend there (radius 12) by (0.1 / 2)^2 / 24.
    CHECK(std::abs(curve.rise()) >= most - kRounding);
    CHECK(std::abs(curve.rise()) <= most + 0.05);
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("the rise of a hollow is negative, as a job gives it") {
  // Over a chord of 600 with a rise of 60: radius 600^2 / (8 * 60) + 60 / 2 = 780, turn 4 atan(2 * 60 / 600).
  const double turn = degrees(4 * std::atan(0.2));
  CHECK(LevelCurve(from_origin({bend(turn, 780)}, 40)).rise() == test::within(60, kRounding));
  CHECK(LevelCurve(from_origin({bend(-turn, 780)}, 40)).rise() == test::within(-60, kRounding));
}

TEST_CASE("the summit of a curve with a flat top is the middle of the flat") {
  const Profile u =
      from_origin({straight(300), bend(90, 80), straight(200), bend(90, 80), straight(300)}, 90);
  const LevelCurve curve(u);
  CHECK(curve.rise() == test::within(380, kRounding));
  CHECK(curve.summit() == test::within(u.girth() / 2, kRounding));
}

TEST_CASE("where the ends meet there is no chord and the start heads to the right") {
  const LevelCurve ring(from_origin({bend(180, 300), straight(50), bend(180, 300), straight(50)}, 77));
  CHECK_FALSE(ring.open());
  CHECK(ring.chord() == 0);
  CHECK(ring.profile().start().heading == 0);
  CHECK(same(ring.profile().start().point, Vec2(0, 0)));
}

TEST_CASE("round numbers for scales are 1, 2 and 5 times powers of ten") {
  CHECK(one_two_five_below(1) == 1);
  CHECK(one_two_five_below(1.99) == 1);
  CHECK(one_two_five_below(2) == 2);
  CHECK(one_two_five_below(4.99) == 2);
  CHECK(one_two_five_below(7300) == 5000);
  CHECK(one_two_five_below(0.07) == test::within(0.05, 1e-15));
  CHECK(one_two_five_below(0.3 - 0.1) == test::within(0.2, 1e-15));  // just below 0.2 as computed
}

TEST_CASE("of many things every first, second, fifth, tenth ... is shown, so that those shown stand apart") {
  CHECK(every_one_two_five(4.2, 4.2) == 1);
  CHECK(every_one_two_five(4.1, 4.2) == 2);
  CHECK(every_one_two_five(2, 4.2) == 5);
  CHECK(every_one_two_five(0.5, 4.2) == 10);
  CHECK(every_one_two_five(0.03, 4.2) == 200);
}
