#include "shared/units.hpp"

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("Conversions start from exact factors") {
  CHECK(kMmPerInch == 25.4);
  CHECK(kMmPerFoot == within(304.8, 1e-13));
  CHECK(kNewtonPerLbf == within(4.4482216152605, 1e-14));  // 0.45359237 * 9.80665
  CHECK(kMpaPerPsi == within(0.0068947572931684, 1e-16));  // 4.4482216152605 / 645.16
  CHECK(radians(180) == kPi);
  CHECK(degrees(kPi / 3) == within(60, 1e-13));
  CHECK(degrees(radians(33.3)) == within(33.3, 1e-13));
}
