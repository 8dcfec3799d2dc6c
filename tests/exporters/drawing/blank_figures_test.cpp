#include "exporters/drawing/blank_figures.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/text.hpp"
#include "kernel/supply/pack_sheets.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

// A crown of 90 degrees; five sheets of 1.5 in two directions of grain, trim 10 round a width of 200.
Evaluation crossed() {
  Evaluation result = evaluated(job_text(
      "width = 200\ntrim = 10\ncount = 3\nprofile = [{bend = 90, radius = 400}]",
      "glue_line = 0\ncover = 3\nplies = [{timber = \"birch-yellow\", thickness = 1.5, grain = \"across\"}, "
      "{timber = \"birch-yellow\", thickness = 1.5, count = 3}, "
      "{timber = \"birch-yellow\", thickness = 1.5, grain = \"across\"}]",
      "[press]\nspringback = \"none\"\n"));
  REQUIRE(result.plan);
  return result;
}

std::vector<PackSheet> pack_of(const Evaluation& result) { return pack_sheets(*result.job, *result.plan); }
std::vector<BlankFigure> figures_of(const Evaluation& result) {
  return blank_figures(*result.plan, pack_of(result));
}

}  // namespace

TEST_CASE("plies of one material, thickness and grain are one figure, counted over all panels") {
  const auto figures = figures_of(crossed());
  REQUIRE(figures.size() >= 2);
  CHECK(figures[0].name == "plies 1, 5");
  CHECK(figures[0].count == 6);
  CHECK(grain_text(*figures[0].grain) == "across");
  CHECK(figures[1].name == "plies 2 to 4");
  CHECK(figures[1].count == 9);
  CHECK(grain_text(*figures[1].grain) == "along");
  CHECK(figures[0].width == Approx(220));
}

TEST_CASE("plies and covers are cut to the longest, which lies outermost on a crown, in whole millimetres") {
  // Middle of the outer cover: 7.5 + 1.5 = 9 above the inner face of radius 400; trim 10 at both ends.
  // Straight runs keep their length in a parallel. pi / 2 * 409 + 20 = 662.46.
  const auto figures = figures_of(crossed());
  REQUIRE(figures.size() >= 3);
  for (std::size_t i = 0; i < 3; ++i) CHECK(figures[i].length == Approx(663));
  CHECK(figures[2].name == "cover sheets");
}

TEST_CASE("the table of plies goes from the inner face outward, each with the girth at its own middle") {
  const Table table = pack_table(pack_of(crossed()));
  REQUIRE(table.rows.size() == 7);
  double before = 0;
  for (std::size_t i = 0; i < 5; ++i) {
    const auto& row = table.rows[i];
    CHECK(row[0] == std::to_string(i + 1));
    CHECK(std::stod(row[4]) > before);
    before = std::stod(row[4]);
    CHECK(row[5] == "663");
    CHECK(row[7] == "3");
  }
  CHECK(table.rows[0][3] == "across");
  CHECK(table.rows[5][0] == "inner cover");
  CHECK(table.rows[6][0] == "outer cover");
  CHECK(std::stod(table.rows[5][4]) < std::stod(table.rows[0][4]));
  CHECK(std::stod(table.rows[6][4]) > before);
  CHECK(table.rows[6][5] == "663");
}

TEST_CASE("covers are drawn without grain or trim") {
  int covers = 0;
  for (const BlankFigure& figure : figures_of(crossed()))
    if (figure.name.starts_with("cover sheet")) {
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
    for (const BlankFigure& figure : figures_of(demo.result)) {
      ++figures;
      CAPTURE(demo.name, figure.name);
      CHECK(count_of(*sheet, size_text(figure.length)) >= 1);
      CHECK(count_of(*sheet, size_text(figure.width)) >= 1);
    }
  }
  CHECK(figures > 20);
}
