#include "kernel/profile/fit/noise.hpp"

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::fitting;

TEST_CASE("The greatest of many normal numbers keeps within the tabled size") {
  // Two-sided normal quantiles: 0.95 of one number within 1.959964, 0.99 within 2.575829 (any table).
  CHECK(greatest_of(1, 0.95) == within(1.959964, 1e-6));
  CHECK(greatest_of(1, 0.99) == within(2.575829, 1e-6));
  // Of 400: each within z at 0.95^(1/400), which is 2 (1 - Phi(z)) = 1.2822e-4, z = 3.8293.
  CHECK(greatest_of(400, 0.95) == within(3.829, 1e-3));
  CHECK(greatest_of(1000000, 0.999) > greatest_of(1000, 0.999));
}

TEST_CASE("Noise is found from neighbours, whatever the spacing") {
  int seen = 0;
  for (const double step : {0.05, 0.5, 2.0, 10.0}) {
    CAPTURE(step);
    Dice dice(seed_of(1));
    const Noise noise = noise_of(sampled(swan(), step, kRunNoise, dice));
    // 60 independent values at least: 9 percent, three times over.
    CHECK(noise.sigma == within(kRunNoise, 0.3 * kRunNoise));
    CHECK(double(noise.lag) * step >= 4 * kRunNoise);
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("Exact points have no noise, joints and coarse curves or not") {
  CHECK(noise_of(sampled(swan(), 1)).sigma < 1e-6);
  CHECK(noise_of(sampled(swan(), 10)).sigma < 1e-6);
  std::vector<Vec2> parabola;
  for (int i = 0; i <= 40; ++i)
    parabola.push_back({25.0 * i - 500, 100 - std::pow(25.0 * i - 500, 2) / 2500});
  CHECK(noise_of(parabola).sigma < 1e-3);
}

TEST_CASE("A few outliers tell nothing of the noise") {
  auto points = noisy(swan(), seed_of(2));
  const double before = noise_of(points).sigma;
  for (const std::size_t i : {20u, 60u}) points[i] += Vec2{0, 30};
  CHECK(noise_of(points).sigma == within(before, 0.25 * before));
}

TEST_CASE("Fewer than four points have no noise") {
  CHECK(noise_of({{0, 0}, {10, 3}}).sigma == 0);
  CHECK(noise_of({{0, 0}, {10, 3}, {20, -5}}).sigma == 0);
}
