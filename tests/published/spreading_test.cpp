// Slats on formers against beams on elastic foundations and continuous beams. The source stands beside each
// check.
#include "kernel/mechanics/spreading.hpp"

#include <cmath>

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A long beam on an elastic foundation under one load is Hetenyi's") {
  // Hetenyi, Beams on Elastic Foundation, 1946, infinite beam (from memory): p = P lambda / 2 e^(-lx) (cos lx
  // + sin lx), lambda = (k / 4 EI)^(1/4) = (20 / 4e9)^(1/4) = 0.00840896; P = 1000: 4.20448 under the
  // load, 3.44945 60 beside it. The foundation of the formula pulls too, so an even load that keeps it
  // pushing is laid on top.
  constexpr double kEven = 10;
  SpreadingSpec spec{.width = 4000,
                     .lower = 1e13,
                     .upper = 1e9,
                     .bed = 20,
                     .supports = {},
                     .loads = {{2000, 0.1, 1000}},
                     .even = kEven,
                     .longest = 5};
  for (double z = 0; z <= 4000; z += 20) spec.supports.push_back(z);
  const Spreading out = spread(spec);
  CHECK(out.at(2000) - kEven == Approx(4.20448).margin(2e-5));
  CHECK(out.at(2060) - kEven == Approx(3.44945).margin(2e-5));
}

TEST_CASE("Periodic formers and straps spread as worked out by Fourier series") {
  // Two equal beams EI 1e9 with a bed of 20 between, lower one held and upper one loaded with 500 N at the
  // same stations, far from the ends: worked out independently as a periodic series.
  struct Row {
    double pitch, even, greatest;
  };
  int seen = 0;
  for (const Row& row : {Row{100, 0.98967, 5.02771}, Row{150, 0.94934, 3.42597}, Row{200, 0.85245, 2.71409},
                         Row{300, 0.49161, 2.29682}}) {
    constexpr int kCells = 40;
    SpreadingSpec spec{
        .width = kCells * row.pitch, .lower = 1e9, .upper = 1e9, .bed = 20, .supports = {}, .loads = {}};
    for (int i = 0; i < kCells; ++i) {
      spec.supports.push_back((i + 0.5) * row.pitch);
      spec.loads.push_back({(i + 0.5) * row.pitch, 0.1, 500});
    }
    const Spreading out = spread(spec);
    double least = INFINITY, greatest = 0;
    for (std::size_t i = 0; i < out.z.size(); ++i) {
      if (out.z[i] < 19 * row.pitch || out.z[i] > 20 * row.pitch) continue;
      least = std::min(least, out.pressure[i]);
      greatest = std::max(greatest, out.pressure[i]);
    }
    CAPTURE(row.pitch);
    CHECK(least / greatest == Approx(row.even).margin(1e-5));
    CHECK(greatest == Approx(row.greatest).margin(1e-5));
    ++seen;
  }
  CHECK(seen == 4);
}

namespace {

// An even load through limp upper slats: the lower ones are a continuous beam. 50 x 100 with E 11 000, 1
// N/mm.
Spreading continuous(int spans) {
  SpreadingSpec spec{.width = spans * 1000.0,
                     .lower = 11000 * 50.0 * 1e6 / 12,
                     .upper = 1e-3,
                     .bed = 1,
                     .supports = {},
                     .loads = {},
                     .even = 1,
                     .longest = 5};
  for (int i = 0; i <= spans; ++i) spec.supports.push_back(i * 1000.0);
  return spread(spec);
}

}  // namespace

TEST_CASE("Lower slats over several formers are continuous beams") {
  // Beam tables for equal spans under an even load (AISC and ANSI/AWC design aids, figures by Civil
  // Engineering Formulas, table 2.1): coefficients 5/384, 0.0054161216 (two spans), 0.0068842 (three spans)
  // of w L^4 / EI; moments 1/8, 1/8, 1/10 of w L^2; greatest reactions 1/2, 10/8, 1.1 of w L.
  const Spreading one = continuous(1), two = continuous(2), three = continuous(3);
  CHECK(one.greatest_sag == Approx(0.284091).margin(1e-5));
  CHECK(two.greatest_sag == Approx(0.118170).margin(1e-5));
  CHECK(three.greatest_sag == Approx(0.150201).margin(1e-5));
  // The second derivative of a cubic element is off by w h^2 / 12 at its ends: 25 / 12.
  CHECK(one.lower_moment == Approx(125000).margin(3));
  CHECK(two.lower_moment == Approx(125000).margin(3));
  CHECK(three.lower_moment == Approx(100000).margin(3));
  CHECK(two.reaction == Approx(1250).margin(0.01));
  CHECK(three.reaction == Approx(1100).margin(0.01));
}
