#include "kernel/reading/svg/flat_bezier.hpp"

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;
using svg_reading::straight_stops;

namespace {

// Poles at stations along a line that leans 3 to 4.
Bezier along(std::initializer_list<double> stations) {
  Bezier out;
  for (const double s : stations) out.poles.emplace_back(10 + 0.8 * s, 20 + 0.6 * s);
  return out;
}

std::vector<double> stops(const Bezier& curve) {
  const auto found = straight_stops(curve);
  REQUIRE(found);
  std::vector<double> out;
  for (const Vec2& p : *found) {
    CHECK(cross(Vec2(0.8, 0.6), p - Vec2(10, 20)) == within(0, kRounding));
    out.push_back(Vec2(0.8, 0.6).dot(p - Vec2(10, 20)));
  }
  return out;
}

void check(const std::vector<double>& found, const std::vector<double>& wanted) {
  REQUIRE(found.size() == wanted.size());
  for (std::size_t i = 0; i < found.size(); ++i) CHECK(found[i] == within(wanted[i], 1e-9));
}

}  // namespace

TEST_CASE("A curve whose poles lie in order on a line is that line") {
  check(stops(along({0, 1, 2, 30})), {30});
  check(stops(along({0, 0, 30, 30})), {30});
  check(stops(along({0, 10, 30})), {30});
  check(stops(along({0, -20, -30})), {-30});
}

TEST_CASE("Poles that swap within the ends make no curve of degree 3 turn back") {
  check(stops(along({0, 30, 0, 30})), {30});
  check(stops(along({0, 20, 10, 30})), {30});
}

TEST_CASE("A curve that overshoots turns back at its farthest point") {
  // 2 t (1 - t) 20 is 10 at t = 1/2.
  check(stops(along({0, 20, 0})), {10, 0});
  // 3 t (1 - t) 40 is 30 at t = 1/2.
  check(stops(along({0, 40, 40, 0})), {30, 0});
  // s = 3 t (1-t)^2 60 - 3 t^2 (1-t) 60 = 180 t (1-t)(1-2t), turning at t = 1/2 -+ sqrt(1/12), where it is
  // +- 180 / (6 sqrt(3)).
  check(stops(along({0, 60, -60, 0})), {180 / (6 * std::sqrt(3)), -180 / (6 * std::sqrt(3)), 0});
  // s = 90 t^2 - 60 t^3 for poles 0, 0, 30, 30; with a last pole of 0 it is 90 t^2 (1 - t), 40/3 at t = 2/3.
  check(stops(along({0, 0, 30, 0})), {40.0 / 3, 0});
}

TEST_CASE("A pole off the line makes a curve") {
  Bezier curve = along({0, 10, 20, 30});
  curve.poles[1] += Vec2(-0.6, 0.8) * 0.9e-6;
  CHECK(straight_stops(curve));
  curve.poles[1] += Vec2(-0.6, 0.8) * 0.2e-6;
  CHECK_FALSE(straight_stops(curve));
}

TEST_CASE("A rational curve is a line unless it turns back") {
  Bezier curve = along({0, 10, 30});
  curve.weights = {1, 0.5, 1};
  check(stops(curve), {30});
  curve = along({0, 20, 0});
  curve.weights = {1, 0.5, 1};
  CHECK_FALSE(straight_stops(curve));
}
