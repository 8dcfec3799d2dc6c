#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/block_view.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

bool block(PartKind kind) {
  return kind == PartKind::spacer_block || kind == PartKind::fixing_block ||
         kind == PartKind::pressing_beam || kind == PartKind::stop;
}

void check_sizes(const Part& part, const Drawing& sheet) {
  const Vec3 size = part.box().size();
  for (const double wanted : {size.x(), size.y(), size.z()}) {
    CAPTURE(part.name(), wanted);
    CHECK(count_of(sheet, size_text(wanted)) >= 1);
  }
  for (const Segment& s : shaped_edge(part))
    if (!s.straight()) CHECK(count_of(sheet, "R" + number(s.radius, 2)) >= 1);
}

}  // namespace

TEST_CASE("a block's sheet gives its three sizes and the radii of its edge") {
  std::size_t blocks = 0, shaped = 0;
  for (const Demo& demo : demo_jobs())
    for (const Part& part : demo.result.plan->parts) {
      if (!block(part.kind())) continue;
      const Drawing* sheet = find_sheet(demo.sheets, part.name());
      REQUIRE(sheet);
      CAPTURE(demo.name);
      check_sizes(part, *sheet);
      ++blocks;
      shaped += shaped_edge(part).empty() ? 0 : 1;
    }
  CHECK(blocks > 10);
  CHECK(shaped > 0);
}

TEST_CASE("a stop's screws are drawn from below, with their bore and how many there are") {
  const std::string text = between_moulds(kDrawnUnequalL, "beam_tilt = 20");
  const PressPlan plan = planned(text);
  const auto stop = std::find_if(plan.parts.begin(), plan.parts.end(),
                                 [](const Part& part) { return part.kind() == PartKind::stop; });
  REQUIRE(stop != plan.parts.end());
  const auto set = sheets_of(text);
  const Drawing& sheet = sheet_named(set, stop->name());
  check_sizes(*stop, sheet);
  CHECK(says(sheet, "2 x Ø"));
  CHECK(says(sheet, "through"));
  for (const Bore& bore : stop->bores()) CHECK(says(sheet, size_text(bore.at.z())));
}

TEST_CASE("a grooved bearer's section is drawn with its groove") {
  const std::string text = job_text("width = 400\nprofile = [{bend = 60, radius = 400}]", birch(4),
                                    "[press]\nspringback = \"none\"\n[formers]\ngroove_depth = 20\nspacing = "
                                    "{count = 5}\n[beams]\nevery = 2\n");
  const PressPlan plan = planned(text);
  const auto set = sheets_of(text);
  std::size_t bearers = 0;
  for (const Part& part : plan.parts) {
    if (part.kind() != PartKind::bearer) continue;
    ++bearers;
    const Drawing& sheet = sheet_named(set, part.name());
    // 46 x 90 with a groove as wide as the board of 18 and 20 deep: cheeks of 14, floor at 70.
    for (const char* figure : {"14", "32", "46", "70", "90"}) {
      CAPTURE(figure);
      CHECK(count_of(sheet, figure) >= 1);
    }
  }
  CHECK(bearers >= 1);
}

TEST_CASE("a small block is drawn at twice its size where the paper has room") {
  std::size_t enlarged = 0;
  for (const Demo& demo : demo_jobs())
    for (const Part& part : demo.result.plan->parts) {
      if (part.kind() != PartKind::fixing_block) continue;
      const Drawing& sheet = *find_sheet(demo.sheets, part.name());
      if (count_of(sheet, "2:1") == 0) continue;
      ++enlarged;
      const double width = part.box().size().x();
      std::size_t outlines = 0;
      for (const Item& item : sheet.items())
        if (const auto* path = std::get_if<Path>(&item.shape); path && path->closed)
          outlines += sheet.pens()[item.pen].name == pens::kPart &&
                      std::abs(box_of_strokes(path->segments).size().x() - 2 * width) < 1e-6;
      CAPTURE(demo.name, part.name());
      CHECK(outlines >= 1);
    }
  CHECK(enlarged > 20);
}

TEST_CASE("the press in section gives the length of every flat along the beam that presses it") {
  std::size_t flats = 0;
  for (const char* paper : {"a3", "a4"})
    for (const Demo& demo : demo_jobs(paper))
      for (const Part& part : demo.result.plan->parts) {
        if (part.kind() != PartKind::pressing_beam) continue;
        const Drawing& sheet = *find_sheet(demo.sheets, "press");
        const std::string length = size_text(part.box().size().x());
        CAPTURE(demo.name, paper, length);
        CHECK(count_of(sheet, "flat " + length) + count_of(sheet, length) >= 1);
        ++flats;
      }
  CHECK(flats >= 10);
}
