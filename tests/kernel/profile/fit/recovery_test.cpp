// Known profiles found again from noisy samples, held against the bound that no unbiased fit can beat.
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

constexpr int kTrials = 100;

// Of many trials: how many were right, and the sums over them.
struct Tally {
  int seen = 0;
  int right_runs = 0;         // as many runs, lines where there are lines
  int right_radii = 0;        // and every radius within 5 percent
  int bends = 0;              // in trials with the right runs
  double share_of_bound = 0;  // sum over these of (error / bound)^2
  double noise_squares = 0;   // sum over trials of points * reported noise^2
  double points = 0;
  std::string wrong;  // what the others gave
};

std::string account(std::uint64_t seed, const Profile& truth, const std::string& found) {
  return "seed " + std::to_string(seed) + "\n  true  " + text_of(truth) + "\n  found " + found + "\n";
}

void add_bends(Tally& tally, const Profile& found, const Profile& truth, const std::vector<double>& bounds) {
  for (std::size_t i = 0; i < truth.runs().size(); ++i) {
    if (truth.runs()[i].straight()) continue;
    const double error = 1 / found.runs()[i].curvature - 1 / truth.runs()[i].curvature;
    tally.share_of_bound += std::pow(error / bounds[i], 2);
    ++tally.bends;
  }
}

void add(Tally& tally, const FitResult& result, const Profile& truth, std::uint64_t seed) {
  const std::vector<Vec2> clean = sampled(truth, kRunStep);
  tally.noise_squares += double(clean.size()) * result.noise * result.noise;
  tally.points += double(clean.size());
  const bool runs = same_kinds(result.profile, truth);
  const bool radii = runs && radius_error(result.profile, truth) < 0.05;
  tally.right_runs += runs;
  tally.right_radii += radii;
  if (runs) add_bends(tally, result.profile, truth, radius_bounds(truth, clean, kRunNoise));
  if (!radii) tally.wrong += account(seed, truth, text_of(result.profile));
}

Tally trials(double tolerance) {
  Tally tally;
  for (int trial = 0; trial < kTrials; ++trial) {
    const std::uint64_t seed = seed_of(trial);
    Dice dice(seed);
    const Profile truth = random_clear_profile(dice);
    const auto points = sampled(truth, kRunStep, kRunNoise, dice);
    try {
      add(tally, fit(through(points, tolerance)), truth, seed);
    } catch (const Error& error) {
      tally.wrong += account(seed, truth, error.what());
    }
    ++tally.seen;
  }
  return tally;
}

}  // namespace

TEST_CASE("Random profiles are found again from noisy samples, as well as noise allows") {
  for (const double tolerance : {1.0, 0.5}) {
    const Tally tally = trials(tolerance);
    CAPTURE(tolerance, tally.right_runs, tally.bends);
    INFO(tally.wrong);
    REQUIRE(tally.seen == kTrials);
    CHECK(tally.right_radii >= 98);
    REQUIRE(tally.bends > 200);
    // 1 for a fit that reaches the bound; over 200 squares of normal variables it strays by 0.1 (one standard
    // deviation).
    CHECK(tally.share_of_bound / tally.bends < 1.3);
    CHECK(std::sqrt(tally.noise_squares / tally.points) == within(kRunNoise, 0.15 * kRunNoise));
  }
}

TEST_CASE("Random profiles are found again exactly from exact samples") {
  int seen = 0;
  for (int trial = 0; trial < kTrials; ++trial) {
    Dice dice(seed_of(trial));
    const Profile truth = random_clear_profile(dice);
    const FitResult result = fit(through(sampled(truth, kRunStep), 1));
    CAPTURE(seed_of(trial), text_of(truth), text_of(result.profile));
    ++seen;
    CHECK(same_kinds(result.profile, truth));
    if (!same_kinds(result.profile, truth)) continue;
    CHECK(radius_error(result.profile, truth) < 1e-6);
    CHECK(result.greatest < 1e-6);
    CHECK(result.suspects.empty());
  }
  CHECK(seen == kTrials);
}

TEST_CASE("No profile of the same runs lies nearer to the points") {
  int compared = 0;
  for (int trial = 0; trial < kTrials; ++trial) {
    CAPTURE(seed_of(trial));
    Dice dice(seed_of(trial));
    const Profile truth = random_clear_profile(dice);
    const auto points = sampled(truth, kRunStep, kRunNoise, dice);
    const FitResult result = fit(through(points, 1));
    if (!same_kinds(result.profile, truth) || !result.suspects.empty()) continue;
    const PlainFit plain = plain_fit(truth, points);
    CHECK(result.rms * result.rms * double(points.size()) <= plain.sum_of_squares * (1 + 1e-6) + 1e-9);
    ++compared;
  }
  CHECK(compared >= 90);
}

TEST_CASE("One noisy arc stays one run, its noise is found and none of its points is suspect") {
  const Profile arc({{-300, 20}, 0.5}, {bend(50, 900)});
  const double step = arc.girth() / 399;
  const double bound = radius_bounds(arc, sampled(arc, step), kRunNoise)[0];
  int single = 0, near = 0, free = 0;
  double shares = 0;
  std::string wrong;
  for (int trial = 0; trial < kTrials; ++trial) {
    Dice dice(seed_of(trial));
    try {
      const FitResult result = fit(through(sampled(arc, step, kRunNoise, dice), 0.5));
      REQUIRE(result.residuals.size() == 400);
      const bool one = result.profile.runs().size() == 1;
      single += one;
      near += std::abs(result.noise / kRunNoise - 1) < 0.15;
      free += result.suspects.empty();
      shares += std::pow((1 / result.profile.runs()[0].curvature - 900) / bound, 2);
      if (!one) wrong += account(seed_of(trial), arc, text_of(result.profile));
    } catch (const Error& error) {
      wrong += account(seed_of(trial), arc, error.what());
    }
  }
  INFO(wrong);
  CHECK(single == kTrials);
  CHECK(near == kTrials);  // from 400 squares, a standard deviation of 3.5 percent
  CHECK(shares / kTrials <
        1.5);  // the mean of 100 squares of normal variables: 1, and 0.14 standard deviation
  CHECK(free >= 98);
}

TEST_CASE("Noise that is given stands, and a finer tolerance never gives fewer runs") {
  Dice dice(seed_of(0));
  const Profile truth({{0, 0}, 0.4},
                      {straight(150), bend(40, 420), straight(120), bend(-35, 600), straight(200)});
  FitSpec spec = through(sampled(truth, kRunStep, kRunNoise, dice), 1);
  spec.noise = kRunNoise;
  std::size_t before = 0;
  int seen = 0;
  for (const double tolerance : {200.0, 50.0, 20.0, 5.0, 2.0, 1.0}) {
    spec.tolerance = tolerance;
    const FitResult result = fit(spec);
    CAPTURE(tolerance, text_of(result.profile));
    CHECK(result.noise == kRunNoise);
    CHECK(result.greatest <= tolerance);
    CHECK(result.tolerance == tolerance);
    CHECK(result.profile.runs().size() >= before);
    before = result.profile.runs().size();
    ++seen;
  }
  CHECK(seen == 6);
  CHECK(before == 5);
}
