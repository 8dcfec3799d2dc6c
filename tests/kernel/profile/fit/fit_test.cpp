#include "kernel/profile/fit/fit.hpp"

#include <algorithm>

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Of the same runs as found, to what the search for the least sum leaves: a millionth.
void has_runs_of(const Profile& found, const Profile& wanted) {
  CAPTURE(text_of(found), text_of(wanted));
  REQUIRE(same_kinds(found, wanted));
  CHECK(radius_error(found, wanted) < 1e-6);
  CHECK(length_error(found, wanted) < 1e-6);
}

std::vector<Vec2> turned(std::vector<Vec2> points, double angle, const Vec2& shift) {
  for (Vec2& p : points) p = p.x() * direction(angle) + p.y() * left_of(direction(angle)) + shift;
  return points;
}

}  // namespace

TEST_CASE("Points walked the other way give the profile reversed") {
  int seen = 0;
  for (int trial = 0; trial < 5; ++trial) {
    const auto points = noisy(swan(), seed_of(trial));
    const FitResult forth = fit(through(points, 1));
    const FitResult back = fit(through({points.rbegin(), points.rend()}, 1));
    has_runs_of(back.profile, forth.profile.reversed());
    CHECK(back.noise == within(forth.noise, 1e-6));
    CHECK(back.rms == within(forth.rms, 1e-6));
    for (std::size_t i = 0; i < points.size(); ++i)
      CHECK(back.residuals[points.size() - 1 - i] == within(-forth.residuals[i], 1e-5));
    ++seen;
  }
  CHECK(seen == 5);
}

TEST_CASE("Points turned and shifted give the same runs from the turned and shifted pose") {
  const auto points = noisy(swan(), seed_of(3));
  const FitResult here = fit(through(points, 1));
  int seen = 0;
  for (const double angle_deg : {0.0, 37.0, 90.0, 180.0, -135.0})
    for (const Vec2& shift : {Vec2{0, 0}, Vec2{2000, -700}, Vec2{-1e5, 1e5}}) {
      CAPTURE(angle_deg, shift.x());
      const FitResult there = fit(through(turned(points, radians(angle_deg), shift), 1));
      has_runs_of(there.profile, here.profile);
      const Pose& start = there.profile.start();
      CHECK(same(start.point, turned({here.profile.start().point}, radians(angle_deg), shift)[0], 1e-5));
      CHECK(std::remainder(start.heading - here.profile.start().heading - radians(angle_deg), 2 * kPi) ==
            within(0, 1e-7));
      ++seen;
    }
  CHECK(seen == 15);
}

TEST_CASE("Points mirrored give hollows for crowns") {
  auto points = noisy(swan(), seed_of(4));
  const FitResult forth = fit(through(points, 1));
  for (Vec2& p : points) p.y() = -p.y();
  const FitResult mirrored = fit(through(points, 1));
  std::vector<Run> runs = forth.profile.runs();
  for (Run& run : runs) run.curvature = -run.curvature;
  has_runs_of(mirrored.profile, {{}, runs});
}

TEST_CASE("The same points give the same result to the last bit") {
  const FitSpec spec = through(noisy(swan(), seed_of(5)), 1);
  const FitResult one = fit(spec), two = fit(spec);
  CHECK(one.residuals == two.residuals);
  CHECK(one.noise == two.noise);
  REQUIRE(one.profile.runs().size() == two.profile.runs().size());
  for (std::size_t i = 0; i < one.profile.runs().size(); ++i) {
    CHECK(one.profile.runs()[i].length == two.profile.runs()[i].length);
    CHECK(one.profile.runs()[i].curvature == two.profile.runs()[i].curvature);
  }
}

TEST_CASE("The profile begins and ends abreast of the first and the last point") {
  const auto points = noisy(swan(), seed_of(6));
  const Profile found = fit(through(points, 1)).profile;
  CHECK((points.front() - found.start().point).dot(found.start().tangent()) == within(0, 1e-6));
  CHECK((points.back() - found.end().point).dot(found.end().tangent()) == within(0, 1e-6));
  CHECK(same(points.front(), found.start().point, 1));
  CHECK(same(points.back(), found.end().point, 1));
}

TEST_CASE("Repeated points are left out and counted") {
  const auto points = noisy(swan(), seed_of(7));
  const FitResult once = fit(through(points, 1));
  CHECK(once.merged == 0);
  std::vector<Vec2> repeated = points;
  for (const std::size_t i : {90u, 40u, 12u, 0u})
    repeated.insert(repeated.begin() + i + 1, i == 40 ? points[i] + Vec2{0.0004, -0.0006} : points[i]);
  const FitResult twice = fit(through(repeated, 1));
  CHECK(twice.merged == 4);
  CHECK(twice.residuals.size() == repeated.size());
  CHECK(twice.suspects.empty());
  has_runs_of(twice.profile, once.profile);
}

TEST_CASE("A point repeated between points of a line leaves the line") {
  const FitResult result = fit(through({{0, 0}, {150, 0}, {150.00005, 0.00001}, {300, 0}}));
  CHECK(result.merged == 1);
  REQUIRE(result.profile.runs().size() == 1);
  CHECK(result.profile.straight());
  CHECK(result.profile.girth() == within(300, 1e-4));
}

TEST_CASE("Denser points of an exact profile give the same runs") {
  int seen = 0;
  for (const double step : {2.0, 5.0, 10.0, 18.0}) {
    CAPTURE(step);
    const FitResult result = fit(through(sampled(swan(), step)));
    CAPTURE(text_of(result.profile));
    REQUIRE(same_kinds(result.profile, swan()));
    CHECK(radius_error(result.profile, swan()) < 1e-6);
    CHECK(result.greatest < 1e-6);
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("Denser noisy points give as many runs") {
  int seen = 0;
  for (const double step : {0.2, 1.0, 2.5, 5.0, 10.0})
    for (int trial = 0; trial < 5; ++trial) {
      CAPTURE(step, trial);
      Dice dice(seed_of(trial));
      const FitResult result = fit(through(sampled(swan(), step, kRunNoise, dice), 1.2));
      CAPTURE(text_of(result.profile));
      CHECK(result.profile.runs().size() == 5);
      ++seen;
    }
  CHECK(seen == 25);
}

TEST_CASE("Twenty thousand points give the radii as well as they can tell them") {
  Dice dice(seed_of(0));
  const std::vector<Vec2> points = sampled(swan(), 0.05, kRunNoise, dice);
  const FitResult result = fit(through(points, 1.2));
  REQUIRE(result.residuals.size() == points.size());
  REQUIRE(same_kinds(result.profile, swan()));
  const std::vector<double> bounds = radius_bounds(swan(), points, kRunNoise);
  for (const std::size_t i : {1u, 3u}) {
    CHECK(1 / result.profile.runs()[i].curvature == within(1 / swan().runs()[i].curvature, 4 * bounds[i]));
    CHECK(result.accuracy[i].radius == within(bounds[i], 0.1 * bounds[i]));
  }
}

TEST_CASE("Exact points at uneven steps give the runs of their profile and none is suspect") {
  int seen = 0;
  for (int trial = 0; trial < 100; ++trial) {
    Dice dice(seed_of(trial));
    std::vector<Vec2> points;
    // Close ones, wide ones and gaps of up to 40.
    for (double s = 0; s < swan().girth(); s += dice.chance(0.1) ? 40 : dice.between(0.5, 12))
      points.push_back(swan().point(s));
    const FitResult result = fit(through(points));
    CAPTURE(seed_of(trial), text_of(result.profile), result.greatest);
    ++seen;
    CHECK(result.suspects.empty());
    CHECK(same_kinds(result.profile, swan()));
    if (same_kinds(result.profile, swan())) CHECK(radius_error(result.profile, swan()) < 1e-6);
  }
  CHECK(seen == 100);
}

TEST_CASE("A given number of arcs is given, each one more lies nearer") {
  std::vector<Vec2> points;
  for (int i = 0; i <= 200; ++i) {
    const double t = radians(20 + 0.7 * i);
    points.push_back({-500 * std::cos(t), 200 * std::sin(t)});
  }
  double before = INFINITY;
  int seen = 0;
  for (std::size_t n = 1; n <= 8; ++n) {
    CAPTURE(n);
    const FitResult result = fit(arcs_through(points, n, 20));
    CHECK(result.profile.runs().size() == n);
    for (const Run& run : result.profile.runs()) CHECK(run.curvature > 0);
    CHECK(result.rms < before);
    before = result.rms;
    ++seen;
  }
  CHECK(seen == 8);
}

TEST_CASE("A given number of arcs through points of so many arcs finds them") {
  const Profile truth({{10, 20}, 1.2}, {bend(40, 300), bend(50, 700), bend(-35, 450), bend(30, 350)});
  const FitResult result = fit(arcs_through(sampled(truth, 10), 4));
  REQUIRE(same_kinds(result.profile, truth));
  CHECK(radius_error(result.profile, truth) < 1e-6);
  const FitResult noisy_one = fit(arcs_through(noisy(truth, seed_of(2)), 4, 1));
  REQUIRE(noisy_one.profile.runs().size() == 4);
  CHECK(radius_error(noisy_one.profile, truth) < 0.05);
}
