// Gluing pressures in the units of their sources. The source stands beside each check.
#include <cmath>

#include "shared/quantity.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

double pressure(const std::string& text) { return parse_pressure(text).value; }

}  // namespace

TEST_CASE("Pressures of the Wood Handbook are the same in both of its units") {
  // Wood Handbook FPL-GTR-282 (2021), ch. 10, p. 10-15: about 0.7 MPa (100 lbf/in2) for light woods up to 1.7
  // MPa (250 lbf/in2) for the densest.
  CHECK(pressure("100 psi") == within(0.689476, 5e-7));
  CHECK(pressure("250 psi") == within(1.72369, 5e-6));
  CHECK(pressure("100 psi") == within(0.7, 0.05));
  CHECK(pressure("250 psi") == within(1.7, 0.05));
  CHECK(pressure("0.7 MPa") == 0.7);
  CHECK(pressure("1700 kPa") == within(1.7, 1e-12));
}

TEST_CASE("Ten kilograms on a square centimetre are 0.98 MPa") {
  // Kurt and Cil 2012, BioResources 7(3) 4341, read in a secondary source: poplar veneer pressed at 2.5 to 15
  // kgf/cm2, best at 10. The kilogram-force is exact: standard gravity, CGPM 1901.
  CHECK(10 * kNewtonPerKgf / 100 == within(0.980665, 1e-12));
  CHECK(parse_force("0.980665 kN").value == within(100 * kNewtonPerKgf, 1e-9));
}

TEST_CASE("A vacuum press is worth what its gauge shows") {
  // Column of mercury, 13 595.1 kg/m3 (0 degrees C, conventional): 26 inches are 88.046 kPa, 12.8 psi.
  const double column = 26 * kMmPerInch * 13.5951e-6 * kNewtonPerKgf;  // MPa
  CHECK(column == within(88.046e-3, 5e-7));
  CHECK(pressure("88.046 kPa") == within(column, 5e-7));
  CHECK(pressure("12.8 psi") == within(column, 0.05 * kMpaPerPsi));
}

TEST_CASE("The clamps of a worked example add up in newtons") {
  // Wood magazine, September 2021, read in a secondary source: 25 in2 at 150 psi take 3750 lbf, nine clamps
  // of 420 lbf.
  const double area = 25 * kMmPerInch * kMmPerInch;
  const double force = pressure("150 psi") * area;
  CHECK(force == within(parse_force("3750 lbf").value, 1e-9));
  CHECK(force == within(16681, 0.5));
  CHECK(std::ceil(force / parse_force("420 lbf").value) == 9);
}
