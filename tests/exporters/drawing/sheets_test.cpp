#include "exporters/drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/sheet_values.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using lamwright::test::says;

namespace {

std::vector<NamedDrawing> sample_sheets(const PressPlan& plan, const std::vector<Finding>& findings = {}) {
  const Job job = sample::job();
  Progress quiet;
  return test::values(sheets({job, plan, findings, quiet}));
}

// The sample, one whose ends differ, and one with its straps turned over guide rollers.
std::vector<PressPlan> variants() {
  PressPlan uneven = sample::plan(),
            rollers = sample::plan(
                "Counter front with a title far too long for any cell of the block, however small");
  for (Closure& closure : uneven.closures) {
    closure.right.mark = {450, -60};
    closure.right.run = (closure.right.mark - closure.right.leaves).norm();
    closure.right.exit = 0.29;
  }
  for (Closure& closure : rollers.closures)
    for (StrapEnd* end : {&closure.left, &closure.right}) {
      const double side = end->leaves.x() > 0 ? 1 : -1;
      end->roller = Roller{{side * 370, 30}, 60, {side * 400, 33}, {side * 362, 1}};
      end->mark = {side * 120, -60};
    }
  return {sample::plan(), uneven, rollers};
}

std::vector<NamedDrawing> all_sheets() {
  std::vector<NamedDrawing> out;
  for (const PressPlan& plan : variants())
    for (NamedDrawing& sheet : sample_sheets(plan)) out.push_back(std::move(sheet));
  return out;
}

}  // namespace

TEST_CASE("the set holds the press, its stations, every unique part and the blanks, in this order") {
  std::vector<std::string> names;
  for (const NamedDrawing& sheet : sample_sheets(sample::plan())) names.push_back(sheet.name);
  CHECK(names ==
        std::vector<std::string>{"press", "stations", "former-lower", "beam", "spacer-block", "blanks"});
}

TEST_CASE("no text of a sheet lies over another text, under a line or outside the frame") {
  long seen = 0;
  for (const NamedDrawing& sheet : all_sheets())
    for (const std::string& fault : test::faults(sheet.drawing, seen))
      FAIL_CHECK(sheet.name << ": " << fault);
  CHECK(seen > 10000);
}

TEST_CASE("the press sheet gives the figures that the press is set up by") {
  const Drawing press = sample_sheets(sample::plan())[0].drawing;
  for (const char* figure : {"652",
                             "326",
                             "411.5",
                             "chord 703.2",
                             "beam 1043",
                             "run 250",
                             "25°",
                             "R362",
                             "189",
                             "60",
                             "pack 18",
                             "pitch 293.3",
                             "pack width 930",
                             "-389.71 / 189.05",
                             "411.5 / -60",
                             "837.76",
                             "862.89",
                             "bed caul 35",
                             "top caul 35",
                             "ratchet space 250",
                             "strap hole Ø12",
                             "base line",
                             "spacer block",
                             "former",
                             "1:5"}) {
    CAPTURE(figure);
    CHECK(says(press, figure));
  }
}

TEST_CASE("the beam sheet gives each bore from the left end and from the centre line") {
  const Drawing beam = sample_sheets(sample::plan())[3].drawing;
  for (const char* figure : {"110", "933", "371.5", "-411.5", "461.5", "1043", "Ø16 x 50", "foot screw",
                             "through", "D40 46 x 90"}) {
    CAPTURE(figure);
    CHECK(says(beam, figure));
  }
}

TEST_CASE("a failed finding stands on every sheet") {
  const Finding finding{"closing", "closing strip", 57.2, 15, "mm", Verdict::fail, "left end", {}, {}};
  const auto set = sample_sheets(sample::plan(), {finding});
  REQUIRE(set.size() == 6);
  for (const NamedDrawing& sheet : set)
    CHECK(says(sheet.drawing, "FAILED: closing strip: 57.2 mm, limit 15 mm (left end)"));
}

TEST_CASE("a plan without closures, layers or sections still draws") {
  PressPlan plan = sample::plan();
  plan.closures.clear();
  plan.layers.clear();
  plan.sections.clear();
  CHECK(sample_sheets(plan).size() == 6);
}
