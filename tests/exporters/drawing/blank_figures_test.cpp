#include "exporters/drawing/blank_figures.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

// A crown of 90 degrees; five sheets of 1.5 in two directions of grain, trim 10 round a width of 200.
PressPlan crossed() {
  return planned(job_text(
      "width = 200\ntrim = 10\ncount = 3\nprofile = [{bend = 90, radius = 400}]",
      "glue_line = 0\ncover = 3\nplies = [{timber = \"birch-yellow\", thickness = 1.5, grain = \"across\"}, "
      "{timber = \"birch-yellow\", thickness = 1.5, count = 3}, "
      "{timber = \"birch-yellow\", thickness = 1.5, grain = \"across\"}]",
      "[press]\nspringback = \"none\"\n"));
}

}  // namespace

TEST_CASE("plies of one material, thickness and grain are one figure, counted over all panels") {
  const auto figures = blank_figures(crossed());
  REQUIRE(figures.size() >= 2);
  CHECK(figures[0].name == "plies 1, 5");
  CHECK(figures[0].count == 6);
  CHECK(grain_text(*figures[0].grain) == "across");
  CHECK(figures[1].name == "plies 2 to 4");
  CHECK(figures[1].count == 9);
  CHECK(grain_text(*figures[1].grain) == "along");
  CHECK(figures[0].width == Approx(220));
}

TEST_CASE("every ply is cut to the longest, which lies outermost on a crown") {
  const PressPlan plan = crossed();
  // Middle of the fifth ply: 4.5 + 1.5 + 0.75 = 6.75 above the inner face of radius 400; trim 10 at both
  // ends. The trim is set off on the neutral line, and straight runs keep their length in a parallel.
  const double longest = kPi / 2 * 406.75 + 20;
  const double turned = common_length(plan.panel) - longest;
  CHECK(std::abs(turned) < 1);
  for (const BlankFigure& figure : blank_figures(plan))
    if (figure.grain) CHECK(figure.length == Approx(common_length(plan.panel)));
}

TEST_CASE("the table of plies goes from the inner face outward, each with the girth at its own middle") {
  const Table table = ply_table(crossed().panel);
  REQUIRE(table.rows.size() == 5);
  double before = 0;
  for (const auto& row : table.rows) {
    CHECK(std::stod(row[4]) > before);
    before = std::stod(row[4]);
    CHECK(row[7] == "3");
  }
  CHECK(table.rows[0][3] == "across");
  CHECK(table.rows[4][5] == size_text(std::stod(table.rows[4][4])));
}

TEST_CASE("covers are drawn without grain or trim") {
  int covers = 0;
  for (const BlankFigure& figure : blank_figures(crossed()))
    if (figure.name.ends_with("cover sheet")) {
      covers += figure.count;
      CHECK_FALSE(figure.grain);
      CHECK(figure.trim == 0);
      CHECK(figure.thickness == 3);
    }
  CHECK(covers == 2);
}

TEST_CASE("pins go through the flat pack inside its edges") {
  std::size_t pins = 0;
  for (const Demo& demo : demo_jobs()) {
    const PressPlan& plan = *demo.result.plan;
    for (const FlatPin& pin : flat_pins(plan)) {
      ++pins;
      CHECK(std::abs(pin.from_middle) < plan.neutral.girth() / 2);
      CHECK(pin.from_edge > 0);
      CHECK(pin.from_edge < plan.panel.blank_width());
    }
  }
  CHECK(pins > 0);
}

TEST_CASE("the sheet of blanks says how many pieces are cut, and how large") {
  std::size_t figures = 0;
  for (const Demo& demo : demo_jobs()) {
    const Drawing* sheet = find_sheet(demo.sheets, "blanks");
    REQUIRE(sheet);
    for (const BlankFigure& figure : blank_figures(*demo.result.plan)) {
      ++figures;
      CAPTURE(demo.name, figure.name);
      CHECK(count_of(*sheet, size_text(figure.length)) >= 1);
      CHECK(count_of(*sheet, size_text(figure.width)) >= 1);
    }
  }
  CHECK(figures > 20);
}
