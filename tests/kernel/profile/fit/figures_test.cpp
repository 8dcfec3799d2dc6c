// Residuals, noise and accuracies mean what they say.
#include <algorithm>

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Residuals are the signed distances, of every point given; greatest and rms are theirs.
void accounts_for(const FitResult& result, const std::vector<Vec2>& points) {
  REQUIRE(result.residuals.size() == points.size());
  double greatest = 0, squares = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double residual = result.residuals[i];
    CAPTURE(i);
    CHECK(std::abs(residual) == within(result.profile.nearest(points[i]).distance, kRounding));
    CHECK(residual == within(signed_distance(result.profile, points[i]), 1e-7));
    greatest = std::max(greatest, std::abs(residual));
    squares += residual * residual;
  }
  CHECK(result.greatest == greatest);
  CHECK(result.rms == within(std::sqrt(squares / double(points.size())), 1e-12 * (1 + greatest)));
}

// Of the values of one figure over many trials.
struct Scatter {
  double sum = 0, squares = 0, told_squares = 0;
  int count = 0;
  void add(double value, double told) {
    sum += value;
    squares += value * value;
    told_squares += told * told;
    ++count;
  }
  double seen() const { return std::sqrt((squares - sum * sum / count) / (count - 1)); }
  double told() const { return std::sqrt(told_squares / count); }
};

constexpr int kSeeds = 200;

}  // namespace

TEST_CASE("Residuals are signed distances from the profile, positive on the left") {
  accounts_for(fit(through(noisy(swan(), seed_of(1)), 1)), noisy(swan(), seed_of(1)));
  accounts_for(fit(through(sampled(swan(), 7), 1)), sampled(swan(), 7));
  accounts_for(fit(through(sampled(swan(), 7), 40)), sampled(swan(), 7));
  const auto points = noisy(swan(), seed_of(2));
  accounts_for(fit(arcs_through(points)), points);
  accounts_for(fit(arcs_through(points, 4, 20)), points);
  auto marked = points;
  marked[30] += Vec2{0, 6};
  marked.insert(marked.begin() + 70, marked[70]);
  accounts_for(fit(through(marked, 1)), marked);
}

TEST_CASE("A point above a line walked to the right has a positive residual") {
  std::vector<Vec2> points;
  for (int i = 0; i <= 40; ++i) points.push_back({10.0 * i, i == 20 ? 0.3 : 0});
  const FitResult result = fit(through(points));
  REQUIRE(result.profile.runs().size() == 1);
  CHECK(result.residuals[20] > 0.2);
  CHECK(result.residuals[19] < 0.01);
}

TEST_CASE("Each run has its accuracy, and a line no radius") {
  const FitResult result = fit(through(noisy(swan(), seed_of(1)), 1));
  REQUIRE(same_kinds(result.profile, swan()));
  REQUIRE(result.accuracy.size() == 5);
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(result.accuracy[i].length > 0);
    CHECK(std::isinf(result.accuracy[i].radius) == swan().runs()[i].straight());
    CHECK(result.accuracy[i].radius > 0);
  }
}

TEST_CASE("The accuracy of a radius is the bound that the points set") {
  int seen = 0;
  for (int trial = 0; trial < 10; ++trial) {
    const auto points = noisy(swan(), seed_of(trial));
    FitSpec spec = through(points, 1);
    spec.noise = kRunNoise;
    const FitResult result = fit(spec);
    if (!same_kinds(result.profile, swan()) || !result.suspects.empty()) continue;
    const std::vector<double> bounds = radius_bounds(result.profile, points, kRunNoise);
    // Second derivatives of the distances are worth noise / radius, 0.05 percent.
    for (const std::size_t i : {1u, 3u})
      CHECK(result.accuracy[i].radius == within(bounds[i], 0.01 * bounds[i]));
    ++seen;
  }
  CHECK(seen >= 9);
}

TEST_CASE("Accuracies agree with the scatter over many measurements, which lie about the true profile") {
  std::vector<Scatter> lengths(5), radii(5);
  double noise_squares = 0;
  int right = 0;
  for (int trial = 0; trial < kSeeds; ++trial) {
    const FitResult result = fit(through(noisy(swan(), seed_of(trial)), 1));
    if (!same_kinds(result.profile, swan())) continue;
    noise_squares += result.noise * result.noise;
    for (std::size_t i = 0; i < 5; ++i) {
      const Run& run = result.profile.runs()[i];
      lengths[i].add(run.length, result.accuracy[i].length);
      if (!run.straight()) radii[i].add(1 / run.curvature, result.accuracy[i].radius);
    }
    ++right;
  }
  // Each of three lines is taken for a bend by 3 standard deviations, 0.3 percent: in all 1.6 of 200.
  REQUIRE(right >= 0.95 * kSeeds);
  // A standard deviation from 200 values strays by 5 percent.
  for (std::size_t i = 0; i < 5; ++i) {
    CAPTURE(i);
    CHECK(lengths[i].told() == within(lengths[i].seen(), 0.15 * lengths[i].seen()));
    if (swan().runs()[i].straight()) continue;
    CHECK(radii[i].told() == within(radii[i].seen(), 0.15 * radii[i].seen()));
    const double mean = radii[i].sum / right;
    CHECK(mean == within(1 / swan().runs()[i].curvature, 4 * radii[i].seen() / std::sqrt(right)));
  }
  // Of 200 * 100 points: 0.5 percent, and as much again for how it is estimated.
  CHECK(std::sqrt(noise_squares / right) == within(kRunNoise, 0.03 * kRunNoise));
}
