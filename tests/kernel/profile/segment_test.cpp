#include "kernel/profile/segment.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"
#include "tests/support/shapes.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A segment knows its length, points and directions") {
  const Segment l = line({10, 0}, {10, 50});
  CHECK(l.length() == within(50, kRounding));
  CHECK(same(l.point(0.2), {10, 10}));
  CHECK(same(l.tangent(0.7), {0, 1}));
  const Segment left = arc({0, 0}, 100, 0, 90);
  CHECK(left.length() == within(50 * kPi, kRounding));
  CHECK(same(left.point(0.5), 100 * direction(kPi / 4)));
  CHECK(same(left.tangent(0), {0, 1}));
  const Segment right = arc({0, 0}, 100, 90, 0);
  CHECK(same(right.tangent(0), {1, 0}));
  CHECK(same(right.tangent(1), {0, -1}));
  CHECK(same(right.reversed().tangent(0), {0, 1}));
  CHECK(right.reversed().turn == within(kPi / 2, 1e-12));
}

TEST_CASE("A run becomes a segment whose turn is anticlockwise") {
  const Segment crown = segment({{0, 0}, kPi / 2}, bend(180, 100));
  CHECK(crown.turn == within(-kPi, 1e-12));
  CHECK(same(crown.centre, {100, 0}));
  CHECK(same(crown.to, {200, 0}));
  CHECK(crown.radius == within(100, kRounding));
  const Segment hollow = segment({{0, 0}, -kPi / 2}, bend(-180, 100));
  CHECK(hollow.turn == within(kPi, 1e-12));
  CHECK(same(hollow.centre, {100, 0}));
}

TEST_CASE("The segments of a profile share their ends to the last bit") {
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    const auto chain = segments(named.profile);
    REQUIRE(chain.size() == named.profile.runs().size());
    for (std::size_t i = 1; i < chain.size(); ++i) {
      CHECK(chain[i].from == chain[i - 1].to);
      ++seen;
    }
  }
  CHECK(seen > 30);
}

TEST_CASE("The distance to an arc is to its circle within the sweep and to its nearer end outside") {
  const Segment quarter = arc({0, 0}, 100, 0, 90);
  CHECK(distance(quarter, {30, 30}) == within(100 - 30 * std::sqrt(2.0), kRounding));
  CHECK(distance(quarter, {0, 0}) == within(100, kRounding));
  CHECK(distance(quarter, {100, -30}) == within(30, kRounding));
  CHECK(distance(quarter, {-40, 100}) == within(40, kRounding));
  CHECK(distance(quarter, {-200, -200}) == within(std::hypot(200, 300), kRounding));
  const Segment most = arc({0, 0}, 100, -150, 150);
  CHECK(distance(most, {-150, 1}) ==
        within((Vec2(-150, 1) - 100 * direction(radians(150))).norm(), kRounding));
  CHECK(distance(most, {150, 0}) == within(50, kRounding));
}

TEST_CASE("Crossings of lines and arcs are found where they lie") {
  const auto one = [](const Segment& a, const Segment& b, const Vec2& p) {
    const auto found = crossings(a, b);
    REQUIRE(found.size() == 1);
    CHECK(same(found[0], p, 1e-6));
  };
  one(line({0, 0}, {100, 60}), line({100, 0}, {0, 60}), {50, 30});
  one(line({0, 0}, {100, 0}), line({100, 0}, {100, 50}), {100, 0});      // an end counts
  one(line({-200, 60}, {200, 60}), arc({0, 0}, 100, 0, 90), {80, 60});   // 60-80-100
  one(arc({0, 0}, 100, 0, 90), arc({120, 0}, 100, 90, 180), {60, 80});   // 60-80-100
  one(line({-50, 100}, {50, 100}), arc({0, 0}, 100, 0, 180), {0, 100});  // tangent
  one(arc({0, 0}, 100, -90, 90), arc({150, 0}, 50, 90, 270), {100, 0});  // touching circles
  CHECK(crossings(line({-200, 60}, {200, 60}), arc({0, 0}, 100, 0, 180)).size() == 2);
  CHECK(crossings(line({0, 0}, {100, 0}), line({0, 1}, {100, 1})).empty());
  CHECK(crossings(line({0, 0}, {49, 29}), line({100, 0}, {0, 60})).empty());
  CHECK(crossings(line({-200, 101}, {200, 101}), arc({0, 0}, 100, 0, 180)).empty());
  CHECK(crossings(arc({0, 0}, 100, 0, 90), arc({0, 0}, 90, 0, 90)).empty());
  CHECK(crossings(arc({0, 0}, 100, 0, 90), arc({120, 0}, 100, -180, -90)).empty());
}

TEST_CASE("Overlapping stretches give their ends") {
  CHECK(crossings(line({0, 0}, {100, 0}), line({60, 0}, {150, 0})).size() == 2);
  CHECK(crossings(line({0, 0}, {100, 0}), line({100, 0}, {150, 0})).size() == 1);
  CHECK(crossings(arc({0, 0}, 100, 0, 90), arc({0, 0}, 100, 45, 135)).size() == 2);
}

TEST_CASE("The box of a segment holds the summit of an arc") {
  const Box2 b = box(arc({0, 0}, 100, 30, 150));
  CHECK(b.high.y() == within(100, kRounding));
  CHECK(b.low.y() == within(50, kRounding));
  CHECK(b.high.x() == within(50 * std::sqrt(3.0), kRounding));
  CHECK(box(arc({0, 0}, 100, 150, 30)).high.y() == within(100, kRounding));  // clockwise the same
  CHECK(box(arc({0, 0}, 100, -170, 170)).low.x() == within(-100 * std::cos(radians(10)), kRounding));
}

TEST_CASE("A stretch is cut out of a profile") {
  const Profile p = from_origin({straight(100), bend(90, 50), straight(30)}, 10);
  const Profile middle = cut(p, 60, 120);
  CHECK(middle.girth() == within(60, kRounding));
  REQUIRE(middle.runs().size() == 2);
  CHECK(middle.runs()[0].length == within(40, kRounding));
  CHECK(same(middle.start().point, p.point(60)));
  CHECK(same(middle.end().point, p.point(120)));
  CHECK(same(cut(p, 0, p.girth()).end().point, p.end().point));
  CHECK(error_of([&] { cut(p, 120, 60); }).has_value());
  CHECK(error_of([&] { cut(p, 0, p.girth() + 1); }).has_value());
}

TEST_CASE("Random segments") {
  const auto random_arc = [] {
    const double from = tenths(-180, 180);
    double sweep = tenths(5, 350);
    if (*rc::gen::arbitrary<bool>()) sweep = -sweep;
    return arc({tenths(-100, 100), tenths(-100, 100)}, tenths(5, 150), from, from + sweep);
  };
  property("a crossing lies on both segments", [&] {
    const Segment a = random_arc();
    const Segment b = *rc::gen::arbitrary<bool>()
                          ? random_arc()
                          : line({tenths(-200, 200), tenths(-200, 200)}, {tenths(-200, 200), 200.05});
    for (const Vec2& p : crossings(a, b)) {
      RC_ASSERT(distance(a, p) <
                1e-5);  // near tangency a station is known to sqrt(2 R 1e-16 R), points to 1e-6
      RC_ASSERT(distance(b, p) < 1e-5);
    }
  });
  property("crossings do not depend on which segment comes first", [&] {
    const Segment a = random_arc(), b = random_arc();
    RC_ASSERT(crossings(a, b).size() == crossings(b, a).size());
  });
  property("where an arc changes sides of a line, a crossing is found", [&] {
    const Segment a = random_arc();
    const double height = tenths(-200, 200) + 0.05;
    const Segment l = line({-1000, height}, {1000, height});
    int changes = 0;
    for (int i = 0; i < 500; ++i)
      if ((a.point(i / 500.0).y() - height) * (a.point((i + 1) / 500.0).y() - height) < 0) ++changes;
    RC_ASSERT(int(crossings(a, l).size()) >= changes);
  });
  property("the distance is that of the nearest of many points", [&] {
    const Segment a = random_arc();
    const Vec2 p{tenths(-300, 300), tenths(-300, 300)};
    double least = INFINITY;
    for (int i = 0; i <= 2000; ++i) least = std::min(least, (a.point(i / 2000.0) - p).norm());
    RC_ASSERT(distance(a, p) <= least + kRounding);
    RC_ASSERT(distance(a, p) >= least - a.length() / 4000);  // half a step
  });
  property("the box holds the segment and is no larger", [&] {
    const Segment a = random_arc();
    const Box2 b = box(a);
    Box2 seen;
    for (int i = 0; i <= 2000; ++i) seen.add(a.point(i / 2000.0));
    RC_ASSERT(((seen.low - b.low).array() > -kRounding).all());
    RC_ASSERT(((b.high - seen.high).array() > -kRounding).all());
    const double sagitta = std::pow(a.length() / 4000, 2) / (2 * a.radius);  // between two samples
    RC_ASSERT(((seen.low - b.low).array() < sagitta + kRounding).all());
    RC_ASSERT(((b.high - seen.high).array() < sagitta + kRounding).all());
  });
}
