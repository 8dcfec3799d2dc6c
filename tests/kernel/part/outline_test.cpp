#include "kernel/part/outline.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"
#include "tests/support/shapes.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::vector<Segment> polygon(const std::vector<Vec2>& corners) {
  std::vector<Segment> loop;
  for (std::size_t i = 0; i < corners.size(); ++i)
    loop.push_back(line(corners[i], corners[(i + 1) % corners.size()]));
  return loop;
}

// The piece of a disc about the origin above the chord of a sector of `angle` degrees, standing on X = 0's
// axis.
Outline disc_segment(double radius, double angle) {
  const Segment top = arc({0, 0}, radius, 90 - angle / 2, 90 + angle / 2);
  return {{top, line(top.to, top.from)}, "segment"};
}

// A ring-like arc: between two radii, over `angle` degrees about the Y axis.
Outline ring(const Vec2& centre, double inner, double outer, double angle) {
  const Segment out = arc(centre, outer, 90 - angle / 2, 90 + angle / 2);
  const Segment in = arc(centre, inner, 90 + angle / 2, 90 - angle / 2);
  return {{out, line(out.to, in.from), in, line(in.to, out.from)}, "ring"};
}

}  // namespace

TEST_CASE("A rectangle has its plain area, centroid and box") {
  const Outline r = rectangle({0, 0}, {1200, 120});
  CHECK(r.area() == within(144000, kRounding));
  CHECK(same(r.centroid(), {600, 60}));
  CHECK(same(r.box().low, {0, 0}));
  CHECK(same(r.box().high, {1200, 120}));
  CHECK(r.segments().size() == 4);
}

TEST_CASE("A triangle has its centroid at a third of its height") {
  const Outline t(polygon({{0, 0}, {90, 0}, {30, 60}}), "triangle");
  CHECK(t.area() == within(2700, kRounding));
  CHECK(same(t.centroid(), {40, 20}));
}

TEST_CASE("Circle segments have the area and centroid of the formulary") {
  // Area R^2 (a - sin a) / 2; centroid 4 R sin^3(a / 2) / (3 (a - sin a)) from the centre.
  int seen = 0;
  for (const double angle : {5.0, 60.0, 120.0, 180.0, 240.0, 330.0}) {
    CAPTURE(angle);
    const double a = radians(angle), radius = 400;
    const Outline piece = disc_segment(radius, angle);
    CHECK(piece.area() == within(radius * radius * (a - std::sin(a)) / 2, 1e-7));
    // For 5 degrees a - sin a is 1e-4 of a: four digits fewer remain.
    CHECK(same(piece.centroid(), {0, 4 * radius * std::pow(std::sin(a / 2), 3) / (3 * (a - std::sin(a)))},
               1e-6));
    ++seen;
  }
  CHECK(seen == 6);
}

TEST_CASE("A half disc and a full disc") {
  const Outline half = disc_segment(300, 180);
  CHECK(half.area() == within(45000 * kPi, 1e-7));
  CHECK(same(half.centroid(), {0, 400 / kPi}));  // 4 R / 3 pi
  const Outline disc({arc({50, 20}, 300, 0, 180), arc({50, 20}, 300, 180, 360)}, "disc");
  CHECK(disc.area() == within(90000 * kPi, 1e-7));
  CHECK(same(disc.centroid(), {50, 20}));
  CHECK(same(disc.box().low, {-250, -280}));
  CHECK(same(disc.box().high, {350, 320}));
  CHECK(disc.contains({50, 20}));
  CHECK(disc.contains({349, 20}));
  CHECK_FALSE(disc.contains({351, 20}));
  CHECK(disc.distance({50, 20}) == within(300, kRounding));
}

TEST_CASE("Ring-like arcs have the area and centroid of the formulary") {
  // Area a (R^2 - r^2) / 2; centroid 4 sin(a / 2) (R^3 - r^3) / (3 a (R^2 - r^2)) from the centre.
  int seen = 0;
  for (const double angle : {10.0, 90.0, 180.0, 270.0, 340.0}) {
    CAPTURE(angle);
    const double a = radians(angle), big = 412, small = 400;
    const Outline piece = ring({7, -3}, small, big, angle);
    CHECK(piece.area() == within(a * (big * big - small * small) / 2, 1e-7));
    const double out =
        4 * std::sin(a / 2) * (std::pow(big, 3) - std::pow(small, 3)) / (3 * a * (big * big - small * small));
    CHECK(same(piece.centroid(), {7, -3 + out}, 1e-7));
    CHECK(piece.contains(Vec2(7, -3 + 406)));
    CHECK_FALSE(piece.contains(Vec2(7, -3 + 399)));
    CHECK_FALSE(piece.contains(Vec2(7, -3)));
    CHECK_FALSE(piece.contains(Vec2(7, -3 - 406)));
    CHECK(piece.distance({7, -3 + 406}) == within(6, kRounding));
    ++seen;
  }
  CHECK(seen == 5);
}

TEST_CASE("A former under a crown has rectangle and segment added up") {
  // 200 wide and 80 high at the sides, a crown of R125 on top: rise 125 - sqrt(125^2 - 100^2) = 50.
  const double a = 2 * std::asin(100 / 125.0);
  const Segment top{{200, 80}, {0, 80}, a, {100, 5}, 125};
  const Outline former({line({0, 0}, {200, 0}), line({200, 0}, {200, 80}), top, line({0, 80}, {0, 0})},
                       "former");
  const double cap = 125 * 125 * (a - std::sin(a)) / 2;
  CHECK(former.area() == within(16000 + cap, 1e-7));
  const double cap_centre = 5 + 4 * 125 * std::pow(0.8, 3) / (3 * (a - std::sin(a)));
  CHECK(same(former.centroid(), {100, (16000 * 40 + cap * cap_centre) / (16000 + cap)}));
  CHECK(former.box().high.y() == within(130, kRounding));
  CHECK(former.contains({100, 129}));
  CHECK_FALSE(former.contains({5, 129}));
}

TEST_CASE("A hollow takes its segment away") {
  const double a = 2 * std::asin(100 / 125.0);
  const Segment top{{200, 80}, {0, 80}, -a, {100, 155}, 125};
  const Outline former({line({0, 0}, {200, 0}), line({200, 0}, {200, 80}), top, line({0, 80}, {0, 0})},
                       "former");
  CHECK(former.area() == within(16000 - 125 * 125 * (a - std::sin(a)) / 2, 1e-7));
  CHECK(former.contains({100, 29}));
  CHECK_FALSE(former.contains({100, 31}));
  CHECK(former.contains({3, 75}));  // the edge is at 155 - sqrt(125^2 - 97^2) = 76.2 there
}

TEST_CASE("Points on the chord of an arc, or level with its ends, are told right whichever way it lies") {
  // A square of 200 with half discs of radius 60 added on one side and taken from another: points on the
  // chords, which are no part of the outline, lie inside and outside. Quarter turns map whole numbers onto
  // whole numbers.
  int seen = 0;
  for (const int quarter : {0, 1, 2, 3}) {
    for (const double sense : {1.0, -1.0}) {
      CAPTURE(quarter, sense);
      const auto turned = [&](const Vec2& p) {
        Vec2 out = p;
        for (int i = 0; i < quarter; ++i) out = Vec2(-out.y(), out.x());
        return out;
      };
      const auto edge = [&](const Vec2& a, const Vec2& b) { return line(turned(a), turned(b)); };
      const Segment top{turned({60, 100}), turned({-60, 100}), sense * kPi, turned({0, 100}), 60};
      const Outline piece(
          {edge({-100, -100}, {100, -100}), edge({100, -100}, {100, 100}), edge({100, 100}, {60, 100}), top,
           edge({-60, 100}, {-100, 100}), edge({-100, 100}, {-100, -100})},
          "square");
      for (const double x : {-59.0, -30.0, 0.0, 30.0, 59.0}) {
        CHECK(piece.contains(turned({x, 100})) == (sense > 0));
        ++seen;
      }
      CHECK(piece.contains(turned({0, 41})) == (sense > 0));
      CHECK(piece.contains(turned({0, 159})) == (sense > 0));
      CHECK_FALSE(piece.contains(turned({0, 161})));
      CHECK_FALSE(piece.contains(turned({70, 101})));
      CHECK(piece.contains(turned({70, 99})));
    }
  }
  CHECK(seen == 40);
}

TEST_CASE("A clockwise loop is turned round") {
  const Outline a(polygon({{0, 0}, {0, 50}, {100, 50}, {100, 0}}), "board");
  CHECK(a.area() == within(5000, kRounding));
  CHECK(same(a.centroid(), {50, 25}));
  double signed_area = 0;
  for (const Segment& s : a.segments()) signed_area += cross(s.from, s.to) / 2;
  CHECK(signed_area == within(5000, kRounding));
  const Outline clockwise_disc({arc({0, 0}, 10, 180, 0), arc({0, 0}, 10, 360, 180)}, "disc");
  CHECK(clockwise_disc.area() == within(100 * kPi, kRounding));
  CHECK(clockwise_disc.segments().front().turn > 0);
}

TEST_CASE("A far-off part has the area and centroid of a near one") {
  const Outline far_off = ring({1e6, -2e6}, 400, 412, 120);
  // Coordinates of 2e6 hold 2^-32 = 2e-10; over a girth of 850 the area moves by at most 2e-7 a side.
  CHECK(far_off.area() == within(radians(120) * (412 * 412 - 400 * 400) / 2, 1e-5));
  CHECK(same(far_off.centroid() - Vec2(1e6, -2e6), ring({0, 0}, 400, 412, 120).centroid(), 1e-6));
}

TEST_CASE("A bow tie is refused with its crossing") {
  const auto error = error_of([] {
    Outline(polygon({{0, 0}, {100, 60}, {100, 0}, {0, 60}}), "former-lower-1");
  });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(holds(error->what(), "former-lower-1"));
  CHECK(holds(error->what(), "(50, 30)"));
}

TEST_CASE("An open loop is refused with both points and the gap") {
  const auto error = error_of([] {
    Outline({line({0, 0}, {100, 0}), line({100, 0}, {100, 50}), line({100, 50}, {0, 50})}, "block");
  });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(holds(error->what(), "block"));
  CHECK(holds(error->what(), "(0, 50)"));
  CHECK(holds(error->what(), "(0, 0)"));
  CHECK(holds(error->what(), "gap 50"));
}

TEST_CASE("A gap within is refused as well, one by rounding is closed exactly") {
  auto loop = polygon({{0, 0}, {100, 0}, {100, 50}, {0, 50}});
  loop[1].from = {100, 1e-3};
  REQUIRE_ERROR(ErrorKind::geometry, Outline(loop, "block"));
  loop[1].from = {100, 1e-8};
  const Outline closed(loop, "block");
  for (std::size_t i = 0; i < 4; ++i) CHECK(closed.segments()[i].to == closed.segments()[(i + 1) % 4].from);
}

TEST_CASE("Loops that are no simple loop are refused") {
  const std::vector<std::vector<Segment>> loops{
      {},
      {line({0, 0}, {100, 0})},
      {line({0, 0}, {100, 0}), line({100, 0}, {0, 0})},                       // there and back: no area
      polygon({{0, 0}, {100, 0}, {200, 0}}),                                  // flat
      polygon({{0, 0}, {100, 0}, {100, 50}, {150, 50}, {100, 50}, {0, 50}}),  // a spike
      polygon({{0, 0}, {100, 0}, {100, 50}, {50, 0}, {0, 50}}),               // a corner touches an edge
      polygon({{0, 0}, {50, 50}, {100, 0}, {100, 100}, {50, 50}, {0, 100}}),  // corners touch
      {arc({0, 0}, 100, 0, 180), arc({0, 0}, 100, 180, 0)},                   // an arc there and back
      {arc({0, 0}, 100, 0, 180), line({-100, 0}, {-100, 150}), line({-100, 150}, {100, 20}),
       line({100, 20}, {100, 0})},
      polygon({{0, 0}, {NAN, 0}, {100, 50}}),
      polygon({{0, 0}, {INFINITY, 0}, {100, 50}}),
  };
  int seen = 0;
  for (const auto& loop : loops) {
    CAPTURE(seen);
    REQUIRE_ERROR(ErrorKind::geometry, Outline(loop, "part"));
    ++seen;
  }
  CHECK(seen == 11);
}

TEST_CASE("Distances to the edge are never negative, inside and outside") {
  const Outline r = rectangle({0, 0}, {100, 50});
  CHECK(r.distance({50, 20}) == within(20, kRounding));
  CHECK(r.distance({50, -20}) == within(20, kRounding));
  CHECK(r.distance({130, 90}) == within(50, kRounding));
  CHECK(r.distance({100, 25}) == within(0, kRounding));
}

TEST_CASE("Random points lie inside exactly when the figure says so") {
  property("in a ring-like arc of any angle", [] {
    const double angle = tenths(5, 355);
    const Outline piece = ring({0, 0}, 60, 100, angle);
    const Vec2 p{tenths(-110, 110), tenths(-110, 110)};
    RC_PRE(piece.distance(p) > 1e-6);
    const double off_axis = std::abs(std::atan2(p.x(), p.y()));  // from the Y axis
    const bool inside = p.norm() > 60 && p.norm() < 100 && off_axis < radians(angle) / 2;
    RC_ASSERT(piece.contains(p) == inside);
  });
  property("in a circle segment of any angle", [] {
    const double angle = tenths(5, 355);
    const Outline piece = disc_segment(100, angle);
    const Vec2 p{tenths(-110, 110), tenths(-110, 110)};
    RC_PRE(piece.distance(p) > 1e-6);
    RC_ASSERT(piece.contains(p) == (p.norm() < 100 && p.y() > 100 * std::cos(radians(angle) / 2)));
  });
  property("in a star, by even and odd", [] {
    std::vector<Vec2> corners;
    for (int i = 0; i < 12; ++i) corners.push_back((i % 2 ? 40 : 100) * direction(i * kPi / 6));
    const Outline star(polygon(corners), "star");
    const Vec2 p{tenths(-110, 110), tenths(-110, 110)};
    RC_PRE(star.distance(p) > 1e-6);
    bool inside = false;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Vec2 a = corners[i], b = corners[(i + 1) % corners.size()];
      if ((a.y() > p.y()) != (b.y() > p.y()) &&
          p.x() < a.x() + (p.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x()))
        inside = !inside;
    }
    RC_ASSERT(star.contains(p) == inside);
  });
}

TEST_CASE("The panel between two parallels has girth times thickness") {
  // Between the inner face and its parallel at t the area is t * (girth of the middle), for every profile.
  int seen = 0;
  for (const auto& named : named_profiles()) {
    if (named.name == "spiral past a full turn") continue;  // its ends come too near for 9 mm
    CAPTURE(named.name);
    const double t = 9;
    std::vector<Segment> loop = segments(named.profile);
    const Pose a = named.profile.start(), b = named.profile.end();
    std::vector<Run> runs;
    for (const Run& run : named.profile.runs())
      runs.push_back({run.length * (1 + t * run.curvature), run.curvature / (1 + t * run.curvature)});
    const Profile outer({a.point + t * a.normal(), a.heading}, runs);
    loop.push_back(line(b.point, outer.end().point));
    const auto back = segments(outer);
    for (auto s = back.rbegin(); s != back.rend(); ++s) loop.push_back(s->reversed());
    loop.push_back(line(outer.start().point, a.point));
    const Outline panel(loop, "panel");
    CHECK(panel.area() == within(t * (named.profile.girth() + t / 2 * named.profile.turn()), 1e-7));
    ++seen;
  }
  CHECK(seen == kNamedProfiles - 1);
}

TEST_CASE("A point on an arc's chord, or off it by rounding, lies inside") {
  // A half disc over a box: the chord of the arc crosses the wood.
  const Outline arch({arc({0, 0}, 300, 0, 180), line({-300, 0}, {-300, -80}), line({-300, -80}, {300, -80}),
                      line({300, -80}, {300, 0})},
                     "arch");
  int seen = 0;
  for (const double x : {-299.0, -1.0, 0.0, 123.4, 299.0})
    for (const double y : {-1e-5, -1e-13, 0.0, 1e-13, 1e-5}) {
      CHECK(arch.contains({x, y}));
      CHECK_FALSE(arch.contains({x + (x < 0 ? -302 : 302), y}));
      ++seen;
    }
  CHECK(seen == 25);
}
