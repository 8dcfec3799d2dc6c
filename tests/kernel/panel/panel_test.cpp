#include "kernel/panel/panel.hpp"

#include <catch2/catch.hpp>

#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const std::string kNoSpringback = "[press]\nspringback = \"none\"\n";

Panel panel_of(const std::string& panel, const std::string& layup) {
  const Evaluation result = evaluated(job_text(panel, layup, kNoSpringback));
  if (!result.panel) throw std::runtime_error(only_error(result));
  return *result.panel;
}

}  // namespace

TEST_CASE("The described face keeps its radius whichever face it is") {
  const auto radius_at = [](const Panel& panel, double height) {
    return 1 / line_at(panel, panel.pressed, height, "face").runs()[1].curvature;
  };
  const Panel inner = panel_of("width = 600\nprofile = [{bend = 60, radius = 500}]", birch(8));
  const Panel outer =
      panel_of("width = 600\nface = \"outer\"\nprofile = [{bend = 60, radius = 500}]", birch(8));
  const Panel centre =
      panel_of("width = 600\nface = \"centre\"\nprofile = [{bend = 60, radius = 500}]", birch(8));
  CHECK(radius_at(inner, 0) == Approx(500));
  CHECK(radius_at(outer, outer.thickness) == Approx(500));
  CHECK(radius_at(centre, centre.thickness / 2) == Approx(500));
  CHECK(radius_at(outer, 0) == Approx(488));
}

TEST_CASE("Male and female radii differ by the thickness, and ply lengths lie between the faces'") {
  // Inside R100, ten plies of 1.2 through 90 degrees: faces 157.080 and 175.929; a ply's own length is at its
  // middle, turn * (R + t (i - 1/2)).
  const Panel panel =
      panel_of("width = 300\ntrim = 0\nprofile = [{bend = 90, radius = 100}]",
               "glue_line = 0\nplies = [{timber = \"birch-yellow\", thickness = 1.2, count = 10}]");
  CHECK(line_at(panel, panel.pressed, 0, "face").girth() == Approx(157.080).margin(1e-3));
  CHECK(line_at(panel, panel.pressed, panel.thickness, "face").girth() == Approx(175.929).margin(1e-3));
  const auto sheets = blanks(panel);
  REQUIRE(sheets.size() == 10);
  for (std::size_t i = 0; i < 10; ++i)
    CHECK(sheets[i].girth == Approx(1.5707963267949 * (100 + 1.2 * (double(i) + 0.5))));
}

TEST_CASE("Trim is added tangent at both ends and to the width on both sides") {
  const Panel panel =
      panel_of("width = 600\ntrim = 25\nprofile = [{line = 340}, {bend = 90, radius = 60}, {line = 340}]",
               "glue_line = 0\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 12}]");
  CHECK(panel.blank_width() == 650);
  CHECK(panel.pressed.runs().front().length == Approx(365));
  CHECK(panel.pressed.runs().back().length == Approx(365));
  // The faces differ by turn times thickness: pi / 2 * 18 = 28.274.
  CHECK(line_at(panel, panel.pressed, 18, "face").girth() -
            line_at(panel, panel.pressed, 0, "face").girth() ==
        Approx(28.274).margin(1e-3));
}

TEST_CASE("A panel thicker than its hollow radius is refused") {
  CHECK(only_error(evaluated(job_text(
            "width = 300\nface = \"outer\"\nprofile = [{line = 100}, {bend = 90, radius = 12}, {line = 100}]",
            birch(8), kNoSpringback))) ==
        "job.toml: bend 1 (radius 12): the inner face lies 12 inside it and collapses; thickest stack that "
        "fits is 11.9, or raise the radius to 12.1");
}

TEST_CASE("A panel that runs into itself is refused") {
  const std::string message =
      only_error(evaluated(job_text("width = 300\nprofile = [{line = 400}, {bend = 170, radius = 40}, {line "
                                    "= 60}, {bend = 120, radius = 40}, {line = 400}]",
                                    birch(4), kNoSpringback)));
  INFO(message);
  CHECK(message.find("cross at (") != std::string::npos);
}
