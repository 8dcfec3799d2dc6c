// Cutting stock: the worked examples of textbooks. The source stands beside each check.
#include "kernel/nest/lengths.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("The textbook rolls of 5600 are cut from seventy-three of them") {
  // Widely published as the worked example of the cutting-stock problem (after Gilmore and Gomory, 1961),
  // thirteen widths from master rolls of 5600: at least 73 rolls, waste 0.401 % (from memory).
  const std::vector<WantedLength> wanted{{"", 1380, 22}, {"", 1520, 25}, {"", 1560, 12}, {"", 1710, 14},
                                         {"", 1820, 18}, {"", 1880, 18}, {"", 1930, 20}, {"", 2000, 10},
                                         {"", 2050, 12}, {"", 2100, 14}, {"", 2140, 16}, {"", 2150, 18},
                                         {"", 2200, 20}};
  const LengthPlan plan = cut_lengths(wanted, {{5600, {}}}, 0);
  CHECK(plan.bars.size() == 73);
  CHECK(plan.proven);
  double used = 0;
  for (const WantedLength& w : wanted) used += w.length * w.count;
  CHECK(100 * (1 - used / plan.bought) == within(0.401, 0.0005));
}
