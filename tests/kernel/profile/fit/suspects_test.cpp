// Points that look wrong are named and bend nothing.
#include <algorithm>
#include <optional>

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

using Indices = std::vector<std::size_t>;

// Square to the curve.
std::vector<Vec2> with_moved(std::vector<Vec2> points, std::size_t i, double by) {
  points[i] += by * swan().at(double(i) * kRunStep).normal();
  return points;
}

}  // namespace

TEST_CASE("A point moved by 5 is named and the runs stay") {
  const auto points = noisy(swan(), seed_of(11));
  for (const double tolerance : {1.0, 0.5}) {
    const FitResult base = fit(through(points, tolerance));
    REQUIRE(same_kinds(base.profile, swan()));
    int seen = 0;
    for (std::size_t i = 3; i + 3 < points.size(); i += 7)
      for (const double by : {5.0, -5.0}) {
        CAPTURE(tolerance, i, by);
        const FitResult result = fit(through(with_moved(points, i, by), tolerance));
        CAPTURE(text_of(result.profile));
        CHECK(result.suspects == Indices{i});
        CHECK(same_kinds(result.profile, base.profile));
        CHECK(result.residuals[i] == within(by, 1));
        CHECK(result.greatest == std::abs(result.residuals[i]));
        ++seen;
      }
    CHECK(seen == 28);
  }
}

TEST_CASE("The first or the last point moved by 5 is named and the runs stay") {
  const auto points = noisy(swan(), seed_of(11));
  int seen = 0;
  for (const std::size_t i : {std::size_t{0}, points.size() - 1})
    for (const double by : {5.0, -5.0}) {
      CAPTURE(i, by);
      const FitResult result = fit(through(with_moved(points, i, by), 1));
      CAPTURE(text_of(result.profile));
      CHECK(result.suspects == Indices{i});
      CHECK(same_kinds(result.profile, swan()));
      ++seen;
    }
  CHECK(seen == 4);
}

TEST_CASE("Two points moved far from one another are both named") {
  const auto points = with_moved(with_moved(noisy(swan(), seed_of(12)), 25, 5), 80, -5);
  const FitResult result = fit(through(points, 1));
  CHECK(result.suspects == Indices{25, 80});
  CHECK(same_kinds(result.profile, swan()));
}

TEST_CASE("A point moved out of an exact row is named and the runs stay exact") {
  const auto exact = sampled(swan(), kRunStep);
  int seen = 0;
  for (const std::size_t i : {5u, 30u, 50u, 61u, 90u}) {
    CAPTURE(i);
    const FitResult result = fit(through(with_moved(exact, i, 5)));
    CAPTURE(text_of(result.profile));
    CHECK(result.suspects == Indices{i});
    REQUIRE(same_kinds(result.profile, swan()));
    CHECK(radius_error(result.profile, swan()) < 1e-6);
    ++seen;
  }
  CHECK(seen == 5);
}

TEST_CASE("A spike is named or refused with its place") {
  auto points = sampled(swan(), kRunStep);
  const Vec2 tip = points[40] + 40 * swan().at(400).normal();
  points.insert(points.begin() + 41, {tip, points[40]});
  std::optional<FitResult> result;
  const auto error = error_of([&] { result = fit(through(points)); });
  if (error) {
    CHECK(error->kind() == ErrorKind::geometry);
    CHECK(holds(error->what(), "("));
  } else {
    CHECK(std::count(result->suspects.begin(), result->suspects.end(), 41u) == 1);
    CHECK(same_kinds(result->profile, swan()));
  }
}

TEST_CASE("Noise alone seldom makes a point suspect") {
  int named = 0;
  for (int trial = 0; trial < 100; ++trial)
    named += fit(through(noisy(swan(), seed_of(trial)), 1)).suspects.empty() ? 0 : 1;
  CHECK(named <= 2);
}
