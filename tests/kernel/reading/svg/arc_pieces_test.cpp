#include "kernel/reading/svg/arc_pieces.hpp"

#include <Eigen/Geometry>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::svg_reading;

namespace {

EllipticArc arc_of(double rx, double ry, double start, double turn) {
  return {{10, 20}, {rx, 0}, {0, ry}, start, turn};
}

std::vector<DrawnPiece> pieces_of(const EllipticArc& arc) {
  return pieces(arc, arc.at(arc.start), arc.at(arc.start + arc.turn));
}

}  // namespace

TEST_CASE("A full circle is two halves of one centre and radius") {
  const auto halves = pieces_of(arc_of(40, 40, 0.3, 2 * kPi));
  REQUIRE(halves.size() == 2);
  const auto& a = std::get<Segment>(halves[0]);
  const auto& b = std::get<Segment>(halves[1]);
  CHECK(a.centre == b.centre);
  CHECK(a.radius == within(40, kRounding));
  CHECK(a.radius == within(b.radius, 1e-12));
  CHECK(a.turn == within(kPi, 1e-12));
  CHECK(b.turn == within(kPi, 1e-12));
  CHECK(a.to == b.from);
}

TEST_CASE("Even scaling, turning and mirroring keep a circle one") {
  int seen = 0;
  for (const double mirror : {1.0, -1.0})
    for (const double angle : {0.0, 0.7, 2.0}) {
      const Vec2 u = 2.5 * direction(angle);
      const Affine map = affine(u, mirror * left_of(u), {7, -3});
      const auto arc = under(map, arc_of(40, 40, 0.3, 2));
      CHECK(circular(arc));
      CHECK(reach(arc) == within(100, kRounding));
      const auto drawn = pieces_of(arc);
      REQUIRE(drawn.size() == 1);
      const auto& segment = std::get<Segment>(drawn[0]);
      CHECK(segment.radius == within(100, kRounding));
      CHECK(segment.turn == within(2 * mirror, 1e-12));
      CHECK(same(segment.centre, map({10, 20})));
      CHECK(same(segment.point(0.5), map(arc_of(40, 40, 0.3, 2).at(1.3))));
      ++seen;
    }
  CHECK(seen == 6);
}

TEST_CASE("Uneven scaling can make a circle of an ellipse") {
  CHECK_FALSE(circular(arc_of(40, 20, 0, 1)));
  CHECK(circular(under(scaled(1, 2), arc_of(40, 20, 0, 1))));
  CHECK_FALSE(circular(under(scaled(1, 2), arc_of(40, 40, 0, 1))));
}

TEST_CASE("Radii equal in seven digits are one radius") {
  CHECK(circular(arc_of(149.99999, 150.00001, 0, 1)));
  CHECK_FALSE(circular(arc_of(149.9999, 150.0001, 0, 1)));
  const EllipticArc arc = arc_of(149.99999, 150.00001, 0.2, 1);
  const auto segment = std::get<Segment>(pieces_of(arc).at(0));
  CHECK(segment.from == arc.at(0.2));
  CHECK(segment.to == arc.at(1.2));
  CHECK((segment.from - segment.centre).norm() == within(segment.radius, kRounding));
  CHECK((segment.to - segment.centre).norm() == within(segment.radius, kRounding));
  CHECK(
      same(segment.centre + Eigen::Rotation2Dd(segment.turn) * (segment.from - segment.centre), segment.to));
  CHECK(segment.turn == within(1, 1e-5));
}

TEST_CASE("Rational quarters lie on their ellipse") {
  const EllipticArc arc{{10, 20}, 80 * direction(0.5), 30 * left_of(direction(0.5)), -1, 2 * kPi};
  const auto drawn = pieces_of(arc);
  REQUIRE(drawn.size() == 4);
  int seen = 0;
  for (const auto& piece : drawn) {
    const auto& bezier = std::get<Bezier>(piece);
    CHECK(bezier.weights == std::vector<double>{1, std::cos(kPi / 4), 1});
    for (int i = 0; i <= 10; ++i, ++seen) {
      const Vec2 p = bezier.point(i / 10.0) - arc.centre;
      const double x = p.dot(direction(0.5)) / 80, y = p.dot(left_of(direction(0.5))) / 30;
      CHECK(x * x + y * y == within(1, 1e-12));
    }
  }
  CHECK(seen == 44);
  CHECK(pieces_of(arc_of(40, 20, 0, -kPi / 2)).size() == 1);
  CHECK(pieces_of(arc_of(40, 20, 0, kPi / 2 + 0.01)).size() == 2);
}

TEST_CASE("An arc between two ends turns about the nearest point that is as far from both") {
  const Segment exact = arc_between({100, 0}, {0, 100}, {0, 0}, kPi / 2);
  CHECK(exact.centre == Vec2(0, 0));
  CHECK(exact.turn == kPi / 2);
  property("arc that was moved", [] {
    const double radius = tenths(10, 500), start = radians(tenths(-180, 180));
    const double turn = radians(tenths(1, 355)) * (*rc::gen::inRange(0, 2) == 0 ? 1 : -1);
    const Vec2 centre{tenths(-100, 100), tenths(-100, 100)};
    const Vec2 from = centre + radius * direction(start);
    const Vec2 to = centre + radius * direction(start + turn) + Vec2(1e-4, -2e-4);
    const Segment arc = arc_between(from, to, centre, turn);
    RC_ASSERT(arc.from == from);
    RC_ASSERT(arc.to == to);
    RC_ASSERT((to - arc.centre).norm() == within(arc.radius, kRounding));
    RC_ASSERT((arc.turn > 0) == (turn > 0));
    // The end moved by 2.3e-4 at most; the chord leaves the arc as steeply as 1/sin of half the turn at
    // least.
    RC_ASSERT(std::abs(arc.turn - turn) <= 4 * 2.3e-4 / radius / std::abs(std::sin(turn / 2)));
    const Vec2 end = arc.centre + Eigen::Rotation2Dd(arc.turn) * (from - arc.centre);
    RC_ASSERT(same(end, to, 1e-8));
  });
}
