// Beams on two supports and strengths of timber for them. The source stands beside each check.
#include <cmath>

#include "kernel/mechanics/sag.hpp"
#include "kernel/mechanics/timber.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// 50 x 100 of E 11 000 on supports 1000 apart.
constexpr double kSpan = 1000;
double stiffness() { return 11000 * second_moment(50, 100); }
EvenBeam loaded_over(double half_load, double load) { return {kSpan / 2, half_load, load, stiffness()}; }
double moment(const EvenBeam& beam, double x) { return beam.curvature(x) * beam.stiffness; }

}  // namespace

TEST_CASE("A rectangle has the second moment of the formulary") {
  // b h^3 / 12: 50 x 100 bent about its width.
  CHECK(second_moment(50, 100) == within(4166666.7, 0.05));
}

TEST_CASE("A simple span under an even load bends as in the beam tables") {
  // AWC Design Aid 6, Fig. 1 (from memory): 5 w L^4 / 384 E I, w L^2 / 8; w 1 N/mm.
  const EvenBeam beam = loaded_over(kSpan / 2, 1);
  CHECK(beam.sag(kSpan / 2) == within(0.284091, 5e-7));
  CHECK(beam.sag(kSpan / 2) == within(5e12 / 384 / stiffness(), 1e-12));
  CHECK(moment(beam, 0) == within(125000, 1e-6));
}

TEST_CASE("A simple span under a load in its middle bends as in the beam tables") {
  // AWC Design Aid 6 (from memory), also AISC: P L^3 / 48 E I, P L / 4; P 1000 N, here spread over 0.02 mm,
  // which takes off (0.02 / 1000)^2 of the sag and P * 0.02 / 8 = 2.5 of the moment.
  const EvenBeam beam = loaded_over(0.01, 1000 / 0.02);
  CHECK(beam.sag(kSpan / 2) == within(0.454545, 1e-6));
  CHECK(moment(beam, 0) == within(250000, 2.6));
}

TEST_CASE("Two equal loads bend a simple span as in the beam tables") {
  // AISC 2005, simple beam with two equal loads a from its ends, read in a secondary source: P a (3 L^2 - 4
  // a^2) / 24 E I in the middle, moment P a between the loads. An even load less a slightly shorter one
  // leaves the two loads, P = 1000 N spread over 0.2 mm each, off by its square over L^2.
  int seen = 0;
  for (const double a : {150.0, 300.0, 450.0}) {
    CAPTURE(a);
    const double half = kSpan / 2 - a, load = 1000 / 0.2;
    const EvenBeam longer = loaded_over(half + 0.1, load), shorter = loaded_over(half - 0.1, load);
    const double sag = longer.sag(kSpan / 2) - shorter.sag(kSpan / 2);
    CHECK(sag == within(1000 * a * (3 * kSpan * kSpan - 4 * a * a) / 24 / stiffness(), 1e-6));
    CHECK(moment(longer, 0) - moment(shorter, 0) == within(1000 * a, 1e-3));
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("Shallow solid timber is as much stronger as the standard says") {
  // EN 1995-1-1 3.2, eq. (3.1), read in a secondary source: k_h = min((150 / h)^0.2, 1.3), rho_k up to 700
  // kg/m3.
  CHECK(size_factor(100, 350) == within(1.08447, 5e-6));
  CHECK(size_factor(40, 350) == 1.3);
  CHECK(size_factor(100, 800) == 1);
}

TEST_CASE("Design strengths take the standard's factors for short loads") {
  // EN 1995-1-1, read in secondary sources: k_mod 0.90 (Table 3.1, solid timber, short-term, service classes
  // 1 and 2), gamma_M 1.3 (Table 2.3). f_m,k 24 MPa: 24 * 0.9 / 1.3.
  CHECK(kShortTerm == 0.9);
  CHECK(kTimberFactor == 1.3);
  CHECK(design_strength(24) == within(16.61538, 5e-6));
  CHECK(design_strength(40) == within(27.69231, 5e-6));
}
