#include "kernel/profile/drawn/drawn.hpp"

#include <cmath>

#include "kernel/profile/drawn/samples.hpp"
#include "tests/support/drawn.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Bezier cubic() { return {{{0, 0}, {100, 200}, {300, 250}, {400, 0}}, {}}; }

// Bernstein's sum, the definition.
Vec2 bernstein(const Bezier& of, double t) {
  const std::size_t n = of.poles.size() - 1;
  Vec2 sum{0, 0};
  double weight = 0, binomial = 1;
  for (std::size_t i = 0; i <= n; ++i) {
    const double share = binomial * std::pow(t, double(i)) * std::pow(1 - t, double(n - i)) *
                         (of.weights.empty() ? 1 : of.weights[i]);
    sum += share * of.poles[i];
    weight += share;
    binomial = binomial * double(n - i) / double(i + 1);
  }
  return sum / weight;
}

}  // namespace

TEST_CASE("A Bezier curve is Bernstein's sum, rational ones too") {
  int seen = 0;
  for (const Bezier& curve : {cubic(), quarter_ellipse(500, 200), Bezier{{{0, 0}, {7, 3}}, {}}})
    for (const double t : {0.0, 0.1, 0.37, 0.5, 0.93, 1.0}) {
      CHECK(same(curve.point(t), bernstein(curve, t), 1e-10));
      ++seen;
    }
  CHECK(seen == 18);
}

TEST_CASE("A rational quarter circle is a circle to rounding") {
  for (int i = 0; i <= 50; ++i) CHECK(quarter_ellipse(100, 100).point(i / 50.0).norm() == within(100, 1e-12));
}

TEST_CASE("Tangents are those of differences, at the ends too, and where poles fall together") {
  const Bezier rational = quarter_ellipse(500, 200);
  for (const Bezier& curve : {cubic(), rational})
    for (const double t : {0.0, 0.25, 0.8, 1.0}) {
      const double h = 1e-6, a = std::max(t - h, 0.0), b = std::min(t + h, 1.0);
      CHECK(same(curve.tangent(t), (curve.point(b) - curve.point(a)).normalized(), 1e-5));
    }
  const Bezier resting{{{0, 0}, {0, 0}, {100, 0}, {100, 0}}, {}};
  CHECK(same(resting.tangent(0), {1, 0}));
  CHECK(same(resting.tangent(1), {1, 0}));
}

TEST_CASE("The two parts of a split lie on the curve, and a reversed one is walked back") {
  const Bezier curve = quarter_ellipse(500, 200);
  const auto [left, right] = curve.split(0.3);
  for (const double t : {0.0, 0.4, 1.0}) {
    CHECK(same(left.point(t), curve.point(0.3 * t), 1e-10));
    CHECK(same(right.point(t), curve.point(0.3 + 0.7 * t), 1e-10));
    CHECK(same(curve.reversed().point(t), curve.point(1 - t), 1e-10));
  }
}

TEST_CASE("Lengths of free curves are those of closed forms") {
  // A quarter of the perimeter 2301.311260 of an ellipse of 500 and 200: complete elliptic integral.
  CHECK(length(DrawnPiece(quarter_ellipse(500, 200))) == within(2301.311260 / 4, 1e-4));
  // A parabola of chord 1000 and rise 100 is 1026.060630 long: (c/2) sqrt(1 + a^2) + ... in closed form.
  CHECK(length(DrawnPiece(Bezier{{{0, 0}, {500, 200}, {1000, 0}}, {}})) == within(1026.060630, 1e-4));
  CHECK(length(DrawnPiece(arc({100, 0}, {0, 100}, {0, 0}, 90))) == within(50 * kPi, kRounding));
}

TEST_CASE("Samples lie evenly along a chain, its ends among them") {
  const std::vector<DrawnPiece> chain{line({0, 0}, {100, 0}), arc({100, 0}, {200, 100}, {100, 100}, 90),
                                      line({200, 100}, {200, 300})};
  const std::vector<Vec2> points = samples(chain, 1000);
  REQUIRE(points.size() == 1000);
  CHECK(same(points.front(), {0, 0}));
  CHECK(same(points.back(), {200, 300}));
  const double step = (300 + 50 * kPi) / 999;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    CHECK((points[i + 1] - points[i]).norm() == within(step, 1e-4));
}

TEST_CASE("Deviation is the greatest distance of the drawn chain") {
  // A straight run along the chord of a parabola of rise 100.
  const std::vector<DrawnPiece> chain{Bezier{{{0, 0}, {500, 200}, {1000, 0}}, {}}};
  const Deviation found = deviation(chain, Profile({}, {{1000, 0}}), 2001);
  CHECK(found.distance == within(100, 1e-3));
  CHECK(same(found.at, {500, 100}, 1));
}
