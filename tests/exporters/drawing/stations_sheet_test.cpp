#include <catch2/catch.hpp>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/stations_view.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

TEST_CASE("the table of stations numbers every former from the near edge") {
  // Four formers on a pack of 930, beams of 46 flush with its edges: pitch (930 - 50) / 3 with straps of 50.
  const Table table = station_table(sample::plan());
  REQUIRE(table.rows.size() == 4);
  const double pitch = (930.0 - 50) / 3;
  for (int i = 0; i < 4; ++i) {
    const auto& row = table.rows[static_cast<std::size_t>(i)];
    CHECK(row[0] == std::to_string(i + 1));
    CHECK(row[1] == number(25 + i * pitch, 2));
    CHECK(row[4] == "yes");
  }
}

TEST_CASE("the view from above holds the pack, and each strap over its former") {
  const PressPlan plan = sample::plan();
  const Box2 box = stations_box(plan);
  CHECK(box.low.x() <= 0);
  CHECK(box.high.x() >= plan.panel.blank_width());
  Drawing drawing("stations", {400, 300}, sheet_pens());
  const View view{0.1, {50, 150}};
  add_stations_view(drawing, plan, view);
  const auto straps = drawn_with(drawing, pens::kStrap);
  REQUIRE(straps.size() == plan.closures.size());
  REQUIRE(!straps.empty());
  for (std::size_t i = 0; i < straps.size(); ++i) {
    CHECK(straps[i].from.x() == Approx(view.x(plan.closures[i].z)));
    CHECK(straps[i].from.y() == Approx(view.y(plan.closures[i].left.mark.x())));
    CHECK(straps[i].to.y() == Approx(view.y(plan.closures[i].right.mark.x())));
  }
}

TEST_CASE("the sheet of stations gives the first, the last and the pack's edge") {
  std::size_t jobs = 0;
  for (const Demo& demo : demo_jobs()) {
    const PressPlan& plan = *demo.result.plan;
    const Drawing* sheet = find_sheet(demo.sheets, "stations");
    REQUIRE(sheet);
    ++jobs;
    CAPTURE(demo.name);
    CHECK(says(*sheet, size_text(plan.sections.front().z)));
    CHECK(says(*sheet, size_text(plan.sections.back().z)));
    CHECK(says(*sheet, size_text(plan.panel.blank_width())));
    CHECK(says(*sheet, counted(static_cast<long>(plan.sections.size()), "former")));
    CHECK(count_of(*sheet, std::to_string(plan.sections.size())) >= 1);
  }
  CHECK(jobs >= kDemoJobs);
}

TEST_CASE("rows of spacer blocks and fixing blocks are counted over the press") {
  std::size_t blocks = 0;
  for (const Demo& demo : demo_jobs()) {
    const PressPlan& plan = *demo.result.plan;
    int listed = 0;
    for (const auto& row : block_rows_table(plan).rows) listed += std::stoi(row.back());
    int placed = 0;
    for (const Body& body : plan.bodies)
      placed += plan.parts[body.part].kind() == PartKind::spacer_block ||
                        plan.parts[body.part].kind() == PartKind::fixing_block
                    ? 1
                    : 0;
    CAPTURE(demo.name);
    CHECK(listed == placed);
    blocks += static_cast<std::size_t>(placed);
  }
  CHECK(blocks > 20);
}
