#include "exporters/plots/heat_scale.hpp"

#include <catch2/catch.hpp>

#include "exporters/plots/plot_pens.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::plots;
using namespace lamwright::test;
using drawing::Drawing;

namespace {

const Box2 kBox{{100, 20}, {134, 100}};  // 80 high: 10 for each of 7 steps and one for none

Drawing scaled(double low, double high) {
  Drawing drawing("scale", {180, 120}, plot_pens());
  Glue glue;
  glue.pressure_low = low;
  glue.pressure_high = high;
  HeatScale(0.34, {"MPa", 1}).add(drawing, kBox, glue);  // seven steps of 0.05
  return drawing;
}

Box2 bracket(const Drawing& drawing) { return box_of_strokes(drawn_with(drawing, pens::kBracket)); }

}  // namespace

TEST_CASE("the scale has a box for each step and their bounds beside it") {
  const Drawing drawing = scaled(0.1, 0.3);
  int bounds = 0;
  for (const char* bound : {"0.05", "0.1", "0.15", "0.2", "0.25", "0.3", "0.35", "none"})
    bounds += count_of(drawing, bound);
  CHECK(bounds == 8);
}

TEST_CASE("the bracket spans the glue's range as far as the scale goes") {
  const Box2 inside = bracket(scaled(0.1, 0.3));
  CHECK(inside.low.y() == within(20 + 10 + 20, kRounding));
  CHECK(inside.high.y() == within(20 + 10 + 60, kRounding));
  CHECK(drawn_with(scaled(0.1, 0.3), pens::kBracket).size() == 3);
  const Drawing beyond = scaled(0.2, 1);
  CHECK(bracket(beyond).low.y() == within(70, kRounding));
  CHECK(bracket(beyond).high.y() == within(100, kRounding));
  CHECK(drawn_with(beyond, pens::kBracket).size() == 2);  // open above
  CHECK(drawn_with(scaled(0.4, 1), pens::kBracket).empty());
}

TEST_CASE("bounds are round in the unit asked for") {
  const HeatScale psi(0.34, {"psi", kMpaPerPsi});  // 49.3 psi: seven steps of 8
  CHECK(psi.count() == 7);
  CHECK(psi.bound(1) == within(8 * kMpaPerPsi, kRounding));
  CHECK(HeatScale(0, {"MPa", 1}).count() == 0);
}
