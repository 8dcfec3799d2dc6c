#include "kernel/profile/profile.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A crown bends down and its heading falls by length times curvature") {
  // Half circle of radius 100 from heading 90: up, over and down; the end lies 200 to the right.
  const Profile arch = from_origin({bend(180, 100)}, 90);
  CHECK(arch.girth() == within(100 * kPi, kRounding));
  CHECK(arch.turn() == within(kPi, 1e-12));
  CHECK(same(arch.end().point, {200, 0}));
  CHECK(arch.end().heading == within(-kPi / 2, 1e-12));
  CHECK(same(arch.point(50 * kPi), {100, 100}));
  CHECK(arch.heading(50 * kPi) == within(0, 1e-12));
  CHECK(arch.curvature(10) == within(0.01, 1e-15));
  CHECK(same(arch.start().normal(), {-1, 0}));  // the outer side is on the left of travel
}

TEST_CASE("A hollow is the crown upside down") {
  const Profile trough = from_origin({bend(-180, 100)}, -90);
  CHECK(same(trough.end().point, {200, 0}));
  CHECK(same(trough.point(50 * kPi), {100, -100}));
  CHECK(trough.curvature(10) < 0);
}

TEST_CASE("A line is walked along its heading") {
  const Profile flat = from_origin({straight(10)}, 30);
  CHECK(same(flat.end().point, {5 * std::sqrt(3.0), 5}));
  CHECK(flat.heading(7) == within(radians(30), 1e-15));
  CHECK(flat.curvature(5) == 0);
}

TEST_CASE("Walking along a nearly straight arc is exact") {
  // Radius 1e9 over 1000: sagitta s^2 / 2R = 0.0005; the next term s^4 / 24 R^3 is 4e-17.
  const Pose end = walked({{0, 0}, 0}, 1e-9, 1000);
  CHECK(end.point.y() == within(-0.0005, 1e-12));
  CHECK(end.point.x() == within(1000 - 1e9 / 6 * 1e-18, kRounding));
  CHECK(end.heading == within(-1e-6, 1e-18));
}

TEST_CASE("A joint belongs to the run after it, the end to the last") {
  const Profile p = from_origin({straight(100), bend(90, 50), straight(30)});
  const double joint = 100 + 25 * kPi;
  CHECK(p.run_at(0) == 0);
  CHECK(p.run_at(99.9) == 0);
  CHECK(p.run_at(100) == 1);
  CHECK(p.run_at(joint) == 2);
  CHECK(p.run_at(p.girth()) == 2);
  CHECK(p.station(0) == 0);
  CHECK(p.station(1) == 100);
  CHECK(p.station(3) == within(p.girth(), 0));
  CHECK(same(p.pose(1).point, {100, 0}));
  CHECK(same(p.pose(2).point, {150, -50}));
  CHECK(same(p.pose(3).point, {150, -80}));
}

TEST_CASE("Stations past the ends by rounding give the ends") {
  const Profile p = from_origin({straight(100), bend(90, 50)});
  CHECK(same(p.point(-1e-9), {0, 0}, 1e-8));
  CHECK(same(p.point(p.girth() + 1e-9), p.end().point, 1e-8));
}

TEST_CASE("Neighbouring runs of equal curvature merge") {
  const Profile p = from_origin({straight(100), straight(20), bend(30, 400), bend(40, 400), straight(15)});
  REQUIRE(p.runs().size() == 3);
  CHECK(p.runs()[0].length == within(120, 1e-12));
  CHECK(p.runs()[1].turn() == within(radians(70), 1e-12));
  CHECK(p.girth() == within(120 + 400 * radians(70) + 15, kRounding));
}

TEST_CASE("A hollow and a crown of one radius do not merge") {
  CHECK(from_origin({bend(30, 400), bend(-30, 400)}).runs().size() == 2);
}

TEST_CASE("Runs that are no runs are refused") {
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({straight(0)}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({straight(-5)}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({straight(NAN)}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({straight(INFINITY)}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({Run{10, NAN}}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({bend(360, 100)}));
  REQUIRE_ERROR(ErrorKind::geometry, from_origin({bend(200, 100), bend(200, 100)}));  // merge to 400 degrees
  CHECK_NOTHROW(from_origin({bend(355, 100)}));
}

TEST_CASE("Shape changes are the joints between runs") {
  const Profile p = from_origin({straight(120), bend(70, 380), straight(60), bend(25, 900)});
  const auto changes = p.shape_changes();
  REQUIRE(changes.size() == 3);
  CHECK(changes[0] == within(120, 1e-12));
  CHECK(changes[1] == within(120 + 380 * radians(70), kRounding));
  CHECK(changes[2] == within(180 + 380 * radians(70), kRounding));
  CHECK(from_origin({bend(30, 400)}).shape_changes().empty());
}

TEST_CASE("An inflection lies where the sense changes, or in the middle of a straight between the senses") {
  CHECK(from_origin({straight(100), bend(90, 50), straight(100), bend(30, 80)}).inflections().empty());
  const auto direct = from_origin({bend(60, 600), bend(-60, 600)}).inflections();
  REQUIRE(direct.size() == 1);
  CHECK(direct[0] == within(600 * radians(60), kRounding));
  const auto spaced = from_origin({bend(50, 400), straight(80), bend(-35, 500), straight(120)}).inflections();
  REQUIRE(spaced.size() == 1);
  CHECK(spaced[0] == within(400 * radians(50) + 40, kRounding));
  const auto wave =
      from_origin({straight(30), bend(40, 300), bend(20, 500), bend(-60, 200), straight(10), bend(40, 300)})
          .inflections();
  REQUIRE(wave.size() == 2);
  CHECK(wave[0] == within(30 + 300 * radians(40) + 500 * radians(20), kRounding));
  CHECK(wave[1] == within(wave[0] + 200 * radians(60) + 5, kRounding));
}

TEST_CASE("The nearest point of a line, an arc and their ends is found") {
  const Profile p = from_origin({straight(100), bend(90, 50)});  // arc about (100, -50)
  CHECK(p.nearest({40, 7}).station == within(40, kRounding));
  CHECK(p.nearest({40, 7}).distance == within(7, kRounding));
  CHECK(p.nearest({-30, 40}).station == 0);
  CHECK(p.nearest({-30, 40}).distance == within(50, kRounding));
  const double half = std::sqrt(0.5);
  const auto on_arc = p.nearest({100 + 80 * half, -50 + 80 * half});
  CHECK(on_arc.station == within(100 + 50 * kPi / 4, kRounding));
  CHECK(on_arc.distance == within(30, kRounding));
  CHECK(p.nearest({150, -90}).station == within(p.girth(), kRounding));
  CHECK(p.nearest({150, -90}).distance == within(40, kRounding));
  CHECK(p.nearest({100, -50}).distance == within(50, kRounding));  // the centre: any point of the arc
}

TEST_CASE("Behind an arc the nearer end is nearest") {
  const Profile arch = from_origin({bend(180, 100)}, 90);  // centre (100, 0)
  CHECK(arch.nearest({90, -300}).station == within(0, kRounding));
  CHECK(arch.nearest({110, -300}).station == within(arch.girth(), kRounding));
  CHECK(arch.nearest({90, -300}).distance == within(std::hypot(90, 300), kRounding));
}

TEST_CASE("The box of an arc reaches its summit") {
  const Box2 arch = from_origin({bend(180, 100)}, 90).box();
  CHECK(same(arch.low, {0, 0}));
  CHECK(same(arch.high, {200, 100}));
  // 300 degrees of a circle about (0, -100) from its top, clockwise: all four sides are reached.
  const Box2 round = from_origin({bend(300, 100)}).box();
  CHECK(same(round.low, {-100, -200}));
  CHECK(same(round.high, {100, 0}));
  // 30 degrees from heading 60 reach no extreme: the ends are the corners of the box.
  const Profile slope = from_origin({bend(30, 100)}, 60);
  CHECK(same(slope.box().low, {0, 0}));
  CHECK(same(slope.box().high, slope.end().point));
  const Box2 hollow = from_origin({bend(-180, 100)}, -90).box();
  CHECK(same(hollow.low, {0, -100}));
}

TEST_CASE("An S of two arcs has the figures of its drawing") {
  // Chord (0,0)-(600,0), R600 bulging up, then the same bulging down to (1200,0); apex R (1 - cos 30)
  // = 80.385.
  const Profile s = from_origin({bend(60, 600), bend(-60, 600)}, 30);
  CHECK(same(s.point(600 * radians(60)), {600, 0}));
  CHECK(same(s.end().point, {1200, 0}));
  CHECK(same(s.point(300 * radians(60)), {300, 600 * (1 - std::cos(radians(30)))}));
  CHECK(s.box().high.y() == within(80.385, 5e-4));
  CHECK(s.girth() == within(1256.637, 5e-4));
  CHECK(s.turn() == within(0, 1e-12));
}

TEST_CASE("Walked backwards, crowns become hollows and the points stay") {
  const Profile p = from_origin({straight(120), bend(70, 380), bend(-25, 900)}, 20);
  const Profile back = p.reversed();
  REQUIRE(back.runs().size() == 3);
  CHECK(back.runs()[0].curvature == within(1 / 900.0, 1e-15));
  CHECK(back.runs()[1].curvature == within(-1 / 380.0, 1e-15));
  CHECK(back.runs()[2].straight());
  CHECK(same(back.start().point, p.end().point));
  CHECK(same(back.end().point, p.start().point));
  CHECK(same(back.point(100), p.point(p.girth() - 100)));
}

TEST_CASE("Mirrored in X = 0, crowns stay crowns and left becomes right") {
  const Profile p = from_origin({straight(120), bend(70, 380), bend(-25, 900)}, 20);
  const Profile m = p.mirrored();
  CHECK(m.runs()[0].curvature == within(-1 / 900.0, 1e-15));
  CHECK(m.runs()[1].curvature == within(1 / 380.0, 1e-15));
  const Vec2 there = p.point(200);
  CHECK(same(m.point(p.girth() - 200), {-there.x(), there.y()}));
}

TEST_CASE("A profile can be posed and moved without a change of shape") {
  const Profile p = from_origin({straight(120), bend(70, 380)}, 20);
  const Profile moved = p.moved({3, -4});
  CHECK(same(moved.point(200), p.point(200) + Vec2(3, -4)));
  CHECK(moved.girth() == p.girth());
  const Profile posed = p.posed({{1, 2}, radians(-10)});
  CHECK(same(posed.start().point, {1, 2}));
  CHECK((posed.end().point - posed.start().point).norm() ==
        within((p.end().point - p.start().point).norm(), kRounding));
}

TEST_CASE("Messages call runs by their kind and count from one") {
  const Profile p = from_origin({straight(120), bend(70, 380), straight(60), bend(-25, 900)});
  CHECK(run_name(p, 0) == "line 1");
  CHECK(run_name(p, 1) == "bend 1");
  CHECK(run_name(p, 2) == "line 2");
  CHECK(run_name(p, 3) == "bend 2");
  CHECK(run_text(p.runs()[0]) == "line 120");
  CHECK(run_text(p.runs()[1]) == "bend 70 deg R380");
  CHECK(run_text(p.runs()[3]) == "bend -25 deg R900");
}
