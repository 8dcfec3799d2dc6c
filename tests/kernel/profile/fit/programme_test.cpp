#include "kernel/profile/fit/programme.hpp"

#include "kernel/profile/fit/refine.hpp"
#include "kernel/profile/fit/samples.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::fitting;

TEST_CASE("A stretch of an exact arc is fitted by that arc in any frame near by") {
  const Profile profile({{4000, -3000}, 0.6}, {bend(60, 350)});
  const auto samples = singles(sampled(profile, 5));
  const Moments moments(samples);
  int seen = 0;
  for (const double s : {0.0, 150.0, 300.0}) {
    const Pose at = profile.at(s);
    const Stretch3 all = moments.stretch(0, samples.size(), {at.point, at.tangent()});
    // Fourth powers of 400 mm keep 1e-6 mm^2 of 16 digits.
    CHECK(all.least() < 1e-5);
    CHECK(all.best()[2] == within(-1 / 350.0, 1e-8));
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("Starts of the true count lie near the least squares and lead there") {
  int seen = 0;
  for (int trial = 0; trial < 10; ++trial) {
    const auto samples = singles(noisy(swan(), seed_of(trial)));
    const Moments moments(samples);
    const Grid grid = grid_of(samples, moments, 1, 80);
    const auto starts = programme(moments, grid, 2, 8, 3);
    REQUIRE(starts.size() == 9);
    REQUIRE_FALSE(starts[5].empty());
    const Path& path = starts[5][0].path;
    CHECK(path.runs.size() == 5);
    const double squares = blocks_of(path, samples).squares;
    // First order about frames a millimetre off.
    CHECK(squares == within(starts[5][0].squares, 0.25 * squares));
    const Refined fit = refined(path, samples, {}, {}, {});
    CHECK(fit.valid);
    const Refined truth = refined({swan().start(), swan().runs()}, samples, {}, {}, {});
    CHECK(fit.blocks.squares <= truth.blocks.squares * (1 + 1e-6));
    ++seen;
  }
  CHECK(seen == 10);
}

TEST_CASE("More runs never fit worse") {
  const auto samples = singles(noisy(swan(), seed_of(1)));
  const Moments moments(samples);
  const auto starts = programme(moments, grid_of(samples, moments, 1, 80), 50, 9, 2);
  std::size_t compared = 0;
  for (std::size_t n = 2; n < starts.size(); ++n) {
    if (starts[n].empty() || starts[n - 1].empty()) continue;
    CHECK(starts[n][0].squares <= starts[n - 1][0].squares * (1 + 1e-9));
    ++compared;
  }
  CHECK(compared >= 4);
}
