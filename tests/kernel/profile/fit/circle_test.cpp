#include "kernel/profile/fit/circle.hpp"

#include "tests/support/expect.hpp"
#include "tests/support/random_runs.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::vector<Vec2> on_arc(const Vec2& centre, double radius, double from_deg, double to_deg, int count) {
  std::vector<Vec2> out;
  for (int i = 0; i < count; ++i)
    out.push_back(centre + radius * direction(radians(from_deg + (to_deg - from_deg) * i / (count - 1))));
  return out;
}

// Gander, Golub and Strebel, BIT 34 (1994) 558.
const std::vector<Vec2> kSix{{1, 7}, {2, 6}, {5, 8}, {7, 7}, {9, 5}, {3, 7}};

}  // namespace

TEST_CASE("The geometric circle of six published points is the published one") {
  const auto circle = geometric_circle(kSix);
  REQUIRE(circle);
  CHECK(circle->centre.x() == within(4.7397824, 1e-6));
  CHECK(circle->centre.y() == within(2.9835327, 1e-6));
  CHECK(circle->radius == within(4.7142260, 1e-6));
}

TEST_CASE("The algebraic circle of the same points is that of mean square gradient 1") {
  // Calculated apart from this code for the same six points.
  const auto circle = algebraic_circle(kSix);
  REQUIRE(circle);
  CHECK(circle->centre.x() == within(4.6139327, 1e-6));
  CHECK(circle->centre.y() == within(2.7952093, 1e-6));
  CHECK(circle->radius == within(4.8792128, 1e-6));
}

TEST_CASE("Both circles go through points of a circle, on short arcs too") {
  int seen = 0;
  for (const double sweep_deg : {5.0, 60.0, 300.0})
    for (const double radius : {10.0, 500.0, 5000.0})
      for (const auto& fitted : {algebraic_circle, geometric_circle}) {
        CAPTURE(sweep_deg, radius);
        const auto circle = fitted(on_arc({700, -300}, radius, 40, 40 + sweep_deg, 20));
        REQUIRE(circle);
        // Coordinates are rounded by 1e-12; the bow of 5 degrees is a thousandth of the radius.
        CHECK(circle->radius == within(radius, 1e-8 * radius));
        CHECK(same(circle->centre, {700, -300}, 1e-8 * radius));
        ++seen;
      }
  CHECK(seen == 18);
}

TEST_CASE("No circle near by has smaller distances than the geometric one") {
  Dice dice(seed_of(1));
  std::vector<Vec2> points = on_arc({0, 0}, 400, 10, 80, 30);
  for (Vec2& p : points) p += Vec2{dice.normal(), dice.normal()};
  const auto squares = [&](const Circle& c) {
    double sum = 0;
    for (const Vec2& p : points) sum += std::pow((p - c.centre).norm() - c.radius, 2);
    return sum;
  };
  const auto best = geometric_circle(points);
  REQUIRE(best);
  int seen = 0;
  for (const Circle& by : {Circle{{0.1, 0}, 0}, Circle{{-0.1, 0}, 0}, Circle{{0, 0.1}, 0},
                           Circle{{0, -0.1}, 0}, Circle{{0, 0}, 0.1}, Circle{{0, 0}, -0.1}}) {
    CHECK(squares({best->centre + by.centre, best->radius + by.radius}) > squares(*best));
    ++seen;
  }
  CHECK(seen == 6);
}

TEST_CASE("Points on a line, two points and one place have no circle") {
  for (const auto& fitted : {algebraic_circle, geometric_circle}) {
    CHECK_FALSE(fitted({{0, 0}, {10, 10}, {20, 20}, {50, 50}}));
    CHECK_FALSE(fitted({{0, 0}, {10, 0}}));
    CHECK_FALSE(fitted({{3, 4}, {3, 4}, {3, 4}}));
  }
}
