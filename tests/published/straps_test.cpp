// Belt friction and strap pressure against published examples. The source stands beside each check.
#include <cmath>

#include "kernel/mechanics/belt.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Tension that a turn of `angle` leaves of `pull`, drawn from one end.
double left_of(double pull, double angle, double mu) { return strap_tension(pull, angle, 0, 0, mu); }

}  // namespace

TEST_CASE("A rope round a drum holds by its friction") {
  // Euler-Eytelwein, T2 = T1 e^(mu angle): worked values.
  CHECK(1 / left_of(1, kPi, 0.2) == within(1.874456, 5e-7));
  CHECK(1 / left_of(1, kPi / 2, 0.25) == within(1.480973, 5e-7));
  // Exercise 27 of engineering mechanics 1, rope friction (pickedshares.com): 100 kg (g 9.81), mu 0.2, wrap 3
  // pi / 2: 382.26 N.
  CHECK(left_of(981, 1.5 * kPi, 0.2) == within(382.2576, 5e-5));
  // Problems on belt and rope friction (openknowledgegraph.com): 2000 N over 5 pi at 0.25 is held by
  // about 39.4 N, e^3.927 being about 51; mu 0.3 over pi gives a ratio of 2.566.
  CHECK(left_of(2000, 5 * kPi, 0.25) == within(39.4, 0.05));
  CHECK(1 / left_of(1, 5 * kPi, 0.25) == within(51, 0.5));
  CHECK(1 / left_of(1, kPi, 0.3) == within(2.566, 5e-4));
}

TEST_CASE("A lashing drawn from one side keeps half on the other at the friction that the standard implies") {
  // EN 12195-1:2003 counts k = 1.5 for a lashing tightened on one side, half the tension on the far side
  // (read in a secondary source); over a half turn that is mu = ln 2 / pi = 0.2206.
  CHECK(left_of(1, kPi, std::log(2) / kPi) == within(0.5, 1e-12));
  CHECK(left_of(1, kPi, 0.2206) == within(0.5, 0.5 * kPi * 5e-5));
  CHECK(1 + left_of(1, kPi, 0.2206) == within(1.5, 0.5 * kPi * 5e-5));
}

TEST_CASE("A strap's tension falls away round the curve") {
  // Worked: 3500 N, mu 0.2.
  CHECK(left_of(3500, radians(45), 0.2) == within(2991.2, 0.05));
  CHECK(left_of(3500, radians(90), 0.2) == within(2556.4, 0.05));
  CHECK(left_of(3500, radians(135), 0.2) == within(2184.8, 0.05));
  CHECK(left_of(3500, radians(180), 0.2) == within(1867.2, 0.05));
  // Drawn from both ends with as much, the middle of a half turn keeps what 90 degrees leave.
  CHECK(strap_tension(3500, radians(90), 3500, radians(90), 0.2) == within(2556.4, 0.05));
  CHECK(strap_tension(3500, radians(135), 3500, radians(45), 0.2) == within(2991.2, 0.05));
}

TEST_CASE("A strap presses by its tension over radius and pitch") {
  // Worked: 3500 / (500 * 50) = 0.14 MPa. 0.1 MPa at R 600 and straps 150 apart takes 9000 N.
  CHECK(strap_pressure(3500, 1 / 500.0, 50) == within(0.14, 1e-12));
  CHECK(strap_pressure(9000, 1 / 600.0, 150) == within(0.1, 1e-12));
}

TEST_CASE("All of an arc's pressure together is what the belt formula says") {
  // Euler-Eytelwein: the integral of the tension over the turn, T1 (1 - e^(-mu angle)) / mu seen from the
  // greater end; 3500 N, mu 0.2, half a turn: 17 500 * (1 - 0.533488) = 8163.95. Simpson's rule on 100 steps
  // is off by (mu h)^4 / 180 of it, 1e-11.
  constexpr int kSteps = 100;
  double sum = 0;
  for (int i = 0; i <= kSteps; ++i) {
    const double tension = left_of(3500, kPi * i / kSteps, 0.2);
    sum += (i == 0 || i == kSteps ? 1 : i % 2 == 1 ? 4 : 2) * strap_pressure(tension, 1 / 400.0, 60);
  }
  const double force = sum * kPi / kSteps / 3 * 400 * 60;
  CHECK(force == within(17500 * (1 - std::exp(-0.2 * kPi)), 1e-4));
  CHECK(force == within(8163.96, 0.05));
}
