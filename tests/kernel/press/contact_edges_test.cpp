// Contact edges of two moulds: parallel, and where shapes that people ask about put them.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "kernel/press/mould/curves.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/random.hpp"
#include "tests/support/two_part_jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// One layer without thickness of glue or cover.
std::string plies(int count, const std::string& thickness) {
  return "glue_line = 0\ncover = 0\nplies = [{timber = \"birch-yellow\", thickness = " + thickness +
         ", count = " + std::to_string(count) + "}]";
}

double radius(const Run& run) { return 1 / std::abs(run.curvature); }

std::vector<Vec2> along(const Profile& line, int steps) {
  std::vector<Vec2> out;
  for (int i = 0; i <= steps; ++i) out.push_back(line.point(line.girth() * i / steps));
  return out;
}

// A profile whose normals keep within 60 degrees of the vertical, as a job's list of runs; crowns, hollows
// and lines.
std::string random_pressable() {
  const int count = *rc::gen::inRange(1, 7);
  double heading = tenths(-50, 50);
  std::string text = "[";
  for (int i = 0; i < count; ++i) {
    const double turn = tenths(5, 70), sense = heading - turn < -60  ? -1
                                               : heading + turn > 60 ? 1
                                                                     : *rc::gen::element(-1.0, 1.0);
    if (heading - sense * turn < -60 || heading - sense * turn > 60) continue;
    heading -= sense * turn;
    text += "{line = " + number(tenths(20, 300), 1) + "}, {bend = " + number(sense * turn, 1) +
            ", radius = " + number(tenths(120, 900), 1) + "}, ";
  }
  return text + "{line = " + number(tenths(20, 300), 1) + "}]";
}

}  // namespace

TEST_CASE("The gap between the contact edges is the same everywhere, square to them") {
  int pressed = 0;
  property("gap", [&] {
    const Evaluation result = evaluated(job_text(panel(random_pressable(), "trim = 12"), birch(6),
                                                 two_part("", "kind = {thickness = 20}\nliner = 1.5")));
    RC_PRE(result.plan.has_value());
    const PressPlan& plan = *result.plan;
    const double gap = 6 * 1.5 + 2 * (3 + 20 + 1.5);
    for (const Section& section : plan.sections) {
      RC_ASSERT(section.lower.runs().size() == section.upper->runs().size());
      for (std::size_t i = 0; i <= section.lower.runs().size(); ++i) {
        const Pose low = section.lower.pose(i), high = section.upper->pose(i);
        // Two walks of up to 3 m: some tens of roundings of 2^-53 * 3e3.
        RC_ASSERT((high.point - low.point - gap * low.normal()).norm() < 1e-11);
        RC_ASSERT(std::abs(high.heading - low.heading) < 1e-14);
      }
      for (std::size_t i = 0; i < section.lower.runs().size(); ++i) {
        const Pose low = section.lower.at((section.lower.station(i) + section.lower.station(i + 1)) / 2);
        RC_ASSERT(std::abs(section.upper->nearest(low.point).distance - gap) < 1e-11);
      }
    }
    ++pressed;
  });
  CHECK(pressed >= 100);
}

TEST_CASE("The S of two arcs has one gap of the panel's thickness, not one saw line pulled apart") {
  // Arcs of 60 degrees and radius 600 on the centre line, 9.525 thick: radii 600 -+ 4.7625, and both faces as
  // long as the centre line, 2 * 600 * pi / 3 = 1256.637 (worked by hand).
  const PressPlan plan = planned(job_text(
      panel("[{bend = 60, radius = 600}, {bend = -60, radius = 600}]", "trim = 0\nface = \"centre\""),
      plies(5, "1.905"), two_part()));
  const double left = 25;  // the contact edges are carried on past the pack
  const Section& section = plan.sections.front();
  const auto& lower = section.lower.runs();
  const auto& upper = section.upper->runs();
  REQUIRE(lower.size() == 4);
  CHECK(radius(lower[1]) == within(595.2375, 1e-9));
  CHECK(radius(lower[2]) == within(604.7625, 1e-9));
  CHECK(radius(upper[1]) == within(604.7625, 1e-9));
  CHECK(radius(upper[2]) == within(595.2375, 1e-9));
  for (const auto* runs : {&lower, &upper})
    CHECK((*runs)[1].length + (*runs)[2].length == within(1256.637, 5e-4));
  for (const Vec2& p : along(section.lower, 400))
    CHECK(section.upper->nearest(p).distance == within(9.525, 1e-9));
  // One saw line opened by 9.525 along the pull would leave 9.525 cos(angle): 8.249 at 30 degrees.
  const Pose steep = section.lower.at(left);
  CHECK(std::abs(degrees(steep.heading)) == within(30, 1e-9));
  CHECK(9.525 * std::cos(steep.heading) == within(8.249, 5e-4));
}

TEST_CASE("Both faces of an S on the described inner face keep the length of the centre line") {
  // 19.05 thick: faces of radius 590.475 and 609.525 of arcs whose centre line has 600 (worked by hand).
  const PressPlan plan = planned(job_text(
      panel("[{bend = 60, radius = 600}, {bend = -60, radius = 600}]", "trim = 0\nface = \"centre\""),
      plies(10, "1.905"), two_part()));
  const Profile inner = line_at(plan.panel, plan.neutral, 0, "inner"),
                outer = line_at(plan.panel, plan.neutral, 19.05, "outer");
  CHECK(radius(inner.runs()[0]) == within(590.475, 1e-9));
  CHECK(radius(inner.runs()[1]) == within(609.525, 1e-9));
  for (const Profile* face : {&inner, &outer}) CHECK(face->girth() == within(1256.637, 5e-4));
}

TEST_CASE("The upper mould's radius is the lower one's and the pack's thickness, glue lines included") {
  // Inside radius 100, ten sheets of 1.2: 112; with nine glue lines of 0.1: 112.9. Sheets are 157.080 long
  // inside and 175.929 outside: 90 degrees of 100 and 112 (worked by hand).
  const std::string profile = "[{bend = 90, radius = 100}]";
  const PressPlan dry = planned(job_text(panel(profile), plies(10, "1.2"), two_part()));
  CHECK(radius(dry.sections.front().lower.runs()[1]) == within(100, 1e-9));
  CHECK(radius(dry.sections.front().upper->runs()[1]) == within(112, 1e-9));
  CHECK(line_at(dry.panel, dry.neutral, 0, "inner").girth() == within(157.080, 5e-4));
  CHECK(line_at(dry.panel, dry.neutral, 12, "outer").girth() == within(175.929, 5e-4));
  const std::string glued =
      "glue_line = 0.1\ncover = 0\nplies = [{timber = \"birch-yellow\", thickness = 1.2, count = 10}]";
  const PressPlan wet = planned(job_text(panel(profile), glued, two_part()));
  CHECK(radius(wet.sections.front().upper->runs()[1]) == within(112.9, 1e-9));
}

TEST_CASE("A liner on both halves, sheathing on both halves, move both contact edges") {
  // Inside radius 600, 18 thick, 3 of liner a side: 597 and 621. Sheathing of 2 x 3 on a crown of 600: ribs
  // of 594; on the hollow side of the same face 606 (worked by hand).
  const std::string profile = "[{bend = 60, radius = 600}]";
  const PressPlan lined =
      planned(job_text(panel(profile), plies(12, "1.5"), two_part("", "kind = \"bare\"\nliner = 3")));
  CHECK(radius(lined.sections.front().lower.runs()[1]) == within(597, 1e-9));
  CHECK(radius(lined.sections.front().upper->runs()[1]) == within(621, 1e-9));
  const std::string sheathing = "kind = \"sheathed\"\nsheathing = [3, 3]";
  const PressPlan crown = planned(job_text(panel(profile), plies(12, "1.5"), two_part("", sheathing)));
  CHECK(radius(crown.sections.front().lower.runs()[1]) == within(594, 1e-9));
  CHECK(radius(crown.sections.front().upper->runs()[1]) == within(624, 1e-9));
  const PressPlan hollow =
      planned(job_text(panel("[{bend = -60, radius = 600}]"), plies(12, "1.5"), two_part("", sheathing)));
  CHECK(radius(hollow.sections.front().lower.runs()[1]) == within(606, 1e-9));
  int sheets = 0;
  for (const Layer& layer : crown.layers) sheets += layer.kind == Layer::Kind::sheathing ? 1 : 0;
  CHECK(sheets == 4);
}

TEST_CASE("A liner as thick as a bend's radius is refused on either mould") {
  CHECK(only_error(evaluated(job_text(panel("[{line = 100}, {bend = 90, radius = 15}, {line = 100}]"),
                                      plies(4, "1.5"), two_part("", "kind = \"bare\"\nliner = 15")))) ==
        "job.toml: bend 1 (radius 15): the lower contact edge lies 15 inside it and collapses; thickest "
        "stack that "
        "fits is 14.9, or raise the radius to 15.1");
  // In a hollow the outer face is the inside of the bend: radius 20 less 6 of plies is 14.
  CHECK(only_error(evaluated(job_text(panel("[{line = 100}, {bend = -90, radius = 20}, {line = 100}]"),
                                      plies(4, "1.5"), two_part("", "kind = \"bare\"\nliner = 16")))) ==
        "job.toml: bend 1 (radius 20, pressed at 14 outside): the upper contact edge lies 16 inside it and "
        "collapses; thickest stack that fits is 13.9, or raise the radius to 22.1");
}

TEST_CASE("Both halves go on straight past the trim line, and the blanks are longer by the trim") {
  // 18 thick, turned by 90 degrees: the outer face is pi / 2 * 18 = 28.274 longer than the inner one. Trim 25
  // and 25 of contact edge past it: 50 past the trim line.
  const PressPlan plan = planned(job_text(panel(kEqualL, "trim = 25"), plies(12, "1.5"), two_part()));
  const Profile inner = line_at(plan.panel, plan.neutral, 0, "inner"),
                outer = line_at(plan.panel, plan.neutral, 18, "outer");
  CHECK(outer.girth() - inner.girth() == within(28.274, 5e-4));
  CHECK(inner.girth() == within(2 * 340 + kPi / 2 * 60 + 2 * 25, 1e-9));
  for (const Profile* edge : {&plan.sections.front().lower, &*plan.sections.front().upper}) {
    CHECK(edge->runs().front().length == within(340 + 50, 1e-9));
    CHECK(edge->runs().back().length == within(340 + 50, 1e-9));
  }
  const std::vector<Blank> sheets = blanks(plan.panel);
  // The innermost sheet's own middle lies 0.75 out.
  CHECK(sheets.front().girth == within(inner.girth() + kPi / 2 * 0.75, 1e-9));
  int trims = 0;
  for (const std::string& name : {std::string("former-lower"), std::string("former-upper")})
    for (const Mark& mark : part_named(plan, name).marks()) {
      if (mark.kind != Mark::Kind::trim_line) continue;
      const Profile& edge =
          name == "former-lower" ? plan.sections.front().lower : *plan.sections.front().upper;
      const double s = edge.nearest(mark.lines.front().from).station;
      CHECK(std::min(s, edge.girth() - s) == within(50, 1e-6));
      ++trims;
    }
  CHECK(trims == 4);
}
