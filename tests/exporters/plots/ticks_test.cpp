#include "exporters/plots/ticks.hpp"

#include <catch2/catch.hpp>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::plots;
using namespace lamwright::test;

namespace {

std::vector<std::string> words(const std::vector<Tick>& ticks) {
  std::vector<std::string> out;
  for (const Tick& tick : ticks) out.push_back(tick.text);
  return out;
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("ticks are multiples of 1, 2 or 5 within the range") {
  const AxisUnit mm{"mm", 1};
  CHECK(words(ticks_within(0, 970, 9, mm)) ==
        Words{"0", "200", "400", "600", "800"});  // nine steps of 100 would end at 900
  CHECK(words(ticks_within(0, 900, 9, mm)).size() == 10);
  CHECK(words(ticks_within(-0.3, 0.3, 3, mm)) == Words{"-0.2", "0", "0.2"});
  CHECK(words(ticks_within(0, 0.034, 4, mm)) == Words{"0", "0.01", "0.02", "0.03"});
}

TEST_CASE("ticks around a range end at or beyond it") {
  const AxisUnit mm{"mm", 1};
  CHECK(words(ticks_around(0, 0.21, 5, mm)) == Words{"0", "0.05", "0.1", "0.15", "0.2", "0.25"});
  CHECK(words(ticks_around(0, 0.2, 4, mm)) == Words{"0", "0.05", "0.1", "0.15", "0.2"});
  CHECK(words(ticks_around(-2.1, 2.5, 5, mm)) == Words{"-3", "-2", "-1", "0", "1", "2", "3"});
}

TEST_CASE("places are in mm, MPa and 1/mm whatever the unit") {
  const Reported inches(LengthUnit::inch);
  const auto ticks = ticks_within(0, 20 * 25.4, 4, length_unit(inches, 508));
  CHECK(words(ticks) == Words{"0", "5", "10", "15", "20"});
  CHECK(ticks.back().at == within(508, kRounding));
  const auto psi = ticks_around(0, 0.2, 5, pressure_unit(inches));
  CHECK(words(psi) == Words{"0", "10", "20", "30"});
  CHECK(psi.back().at == within(30 * kMpaPerPsi, kRounding));
  CHECK(curvature_unit(inches).size == within(1 / 304.8, kRounding));
  CHECK(curvature_unit(Reported(LengthUnit::cm)).size == 1e-3);
}

TEST_CASE("inches and feet are whole, feet from three feet on") {
  const Reported inches(LengthUnit::inch), feet(LengthUnit::foot);
  CHECK(words(ticks_within(0, 60, 9, length_unit(inches, 60))) == Words{"0", "1", "2"});
  CHECK(length_unit(feet, 900).name == "in");
  CHECK(length_unit(feet, 915).name == "ft");
  CHECK(words(ticks_within(0, 1000, 9, length_unit(feet, 1000))) == Words{"0", "1", "2", "3"});
  CHECK(length_unit(inches, 9000).name == "in");
  CHECK(length_unit(Reported(LengthUnit::cm), 9000).size == 10);
  CHECK(length_unit(Reported(LengthUnit::m), 10).size == 1000);
}
