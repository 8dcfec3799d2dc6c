#include "kernel/nest/depths.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "kernel/nest/dice.hpp"

using namespace lamwright;
using namespace lamwright::nesting;

TEST_CASE("Depths looked up are those from all edges, in a zone with a notch and a hole as well") {
  const Zone zone(
      {{{0, 0}, {90000, 0}, {90000, 40000}, {50000, 40000}, {50000, 11000}, {42000, 70000}, {0, 70000}},
       {{10000, 10000}, {10000, 30000}, {30000, 30000}, {30000, 10000}}});
  std::int64_t work = 0;
  const Depths depths(zone, work);
  Dice dice;
  int deep = 0, out = 0;
  for (int n = 0; n < 20000; ++n) {
    const GridPoint p{static_cast<Grid>(dice.below(110000)) - 10000,
                      static_cast<Grid>(dice.below(90000)) - 10000};
    const double expected = depth(zone, p);
    // The same arithmetic on fewer edges: the same to the last bit.
    CHECK(depths.at(p, work) == expected);
    ++(expected > 0 ? deep : out);
  }
  CHECK(deep > 5000);
  CHECK(out > 5000);
}

TEST_CASE("Looking up a depth takes a small part of the work of all edges") {
  GridLoop round;
  for (int i = 0; i < 200; ++i)
    round.push_back(
        {std::llround(1e6 * std::cos(i * 0.0314159)), std::llround(1e6 * std::sin(i * 0.0314159))});
  const Zone zone({round});
  std::int64_t making = 0, asking = 0;
  const Depths depths(zone, making);
  Dice dice;
  for (int n = 0; n < 1000; ++n)
    depths.at(
        {static_cast<Grid>(dice.below(2000000)) - 1000000, static_cast<Grid>(dice.below(2000000)) - 1000000},
        asking);
  CHECK(asking > 0);
  CHECK(asking < 1000 * 200 * 6 / 4);
}
