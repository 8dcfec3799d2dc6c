#include "kernel/profile/fit/clean.hpp"

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::fitting;

TEST_CASE("Chords of gaps far wider than the others count as measured") {
  // The ends of a line alone and a dense corner: 7 points between the first two, none elsewhere.
  const std::vector<Vec2> corner{{0, 0}, {400, 0}, {400.5, 0.4}, {401, 1.2}, {401.2, 2.2}};
  const std::vector<Vec2> more = with_chords(corner);
  REQUIRE(more.size() == 12);
  for (std::size_t i = 0; i <= 8; ++i) CHECK(same(more[i], {50.0 * double(i), 0}));
  CHECK(with_chords(sampled(swan(), 10)).size() == sampled(swan(), 10).size());
}

TEST_CASE("A point off its neighbours is a stray, a joint is not") {
  const auto exact = sampled(swan(), kRunStep);
  CHECK(strays(exact, noise_of(exact), 0.25).empty());
  int seen = 0;
  for (std::size_t i = 4; i + 4 < exact.size(); i += 9) {
    auto points = exact;
    points[i] += Vec2{0, 4};
    CAPTURE(i);
    CHECK(strays(points, noise_of(points), 0.25) == std::vector<std::size_t>{i});
    ++seen;
  }
  CHECK(seen >= 10);
}

TEST_CASE("Noise alone makes hardly a stray") {
  std::size_t found = 0;
  for (int trial = 0; trial < 20; ++trial) {
    const auto points = noisy(swan(), seed_of(trial));
    found += strays(points, noise_of(points), 0.25).size();
  }
  // Of 2000 points beyond 4.5 standard deviations, less where noise is estimated low.
  CHECK(found <= 6);
}

TEST_CASE("Wherever more than one point in twenty is off, none is a stray") {
  auto points = noisy(swan(), seed_of(3));
  for (std::size_t i = 5; i + 5 < points.size(); i += 9) points[i] += Vec2{0, 8};
  CHECK(strays(points, noise_of(points), 0.25).empty());
}

TEST_CASE("The point where the way turns back is named by its place in the list given") {
  const std::vector<Vec2> points{{0, 0}, {0, 0}, {100, 0}, {200, 0}, {150, 0}, {300, 0}};
  const CleanPoints clean = cleaned(points);
  CHECK(clean.merged == 1);
  CHECK(clean.index == std::vector<std::size_t>{0, 2, 3, 4, 5});
  CHECK(message_of([&] { check_one_way(clean, noise_of(clean.at), {}); }) ==
        "point 4: turns back at (200, 0); give them in order along the curve, once");
}
