#include "kernel/job/read_curve.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Points of an arc of radius 900 over 1200, and the same in a DXF of one arc without units.
std::string arc_table() {
  std::string out = "x;y\n";
  for (int x = -600; x <= 600; x += 50)
    out += std::to_string(x) + ";" + std::to_string(std::sqrt(900.0 * 900 - double(x) * x)) + "\n";
  return out;
}

const std::string kSvg =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"800mm\" height=\"400mm\" viewBox=\"0 0 800 400\">"
    "<path id=\"a\" d=\"M0 300 A500 500 0 0 1 600 300\"/></svg>";
const std::string kDxf =
    "0\nSECTION\n2\nENTITIES\n0\nARC\n8\nPROFILE\n10\n0\n20\n0\n40\n30\n50\n60\n51\n120\n0\nENDSEC\n0\nEOF\n";

ProfileResult read(const std::string& profile) {
  const MemorySources files({{"arc.csv", arc_table()}, {"arc.svg", kSvg}, {"arc.dxf", kDxf}});
  return read_profile("panel.profile = " + profile, "job.toml", files);
}

std::string fault(const std::string& profile) {
  const ProfileResult result = read(profile);
  return result.errors.empty() ? "" : result.errors.front().what();
}

double radius(const ProfileResult& result) {
  REQUIRE(result.reading);
  REQUIRE(result.reading->profile.runs().size() == 1);
  return 1 / result.reading->profile.runs().front().curvature;
}

}  // namespace

TEST_CASE("Points of a table are fitted, and the figures of the fit are kept") {
  const ProfileResult result = read("{points = \"arc.csv\", fit = \"arc\"}");
  CHECK(radius(result) == within(900, 1e-4));
  REQUIRE(result.reading->fit);
  CHECK(result.reading->points.size() == 25);
  CHECK(result.reading->fit->greatest < 1e-5);
  CHECK(result.reading->fit->profile.start().point == result.reading->profile.start().point);
  CHECK_FALSE(result.reading->drawing);
}

TEST_CASE("Points may stand in the job, with units of their own") {
  CHECK(radius(read("{points = [[-100, 0], [0, \"2 in\"], [100, 0]], fit = \"arc\"}")) ==
        within((10000 + 50.8 * 50.8) / (2 * 50.8), 1e-6));
  CHECK(holds(fault("{points = [[1, 2], [3], [4, 5]]}"),
              "panel.profile.points[1]: read a list; write a point as [x, y]"));
  CHECK(holds(fault("{points = [[1, 2]]}"), "has 1 point; give at least two"));
}

TEST_CASE("Points listed from right to left give the same profile, and residuals keep to its left side") {
  const ProfileResult a = read("{points = [[-500, 0], [0, 100], [400, 40], [500, 0]], fit = \"arc\"}");
  const ProfileResult b = read("{points = [[500, 0], [400, 40], [0, 100], [-500, 0]], fit = \"arc\"}");
  CHECK(radius(a) == within(radius(b), 1e-6));
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(a.reading->fit->residuals[i] == within(b.reading->fit->residuals[3 - i], 1e-6));
}

TEST_CASE("Offsets stand at equal stations") {
  // Chord 1200, rise 150 in the middle: R = (600^2 + 150^2) / 300 = 1275.
  CHECK(radius(read("{offsets = [0, 150, 0], every = 600, fit = \"arc\"}")) == within(1275, 1e-6));
  CHECK(holds(fault("{offsets = [0, 150], every = 600}"), "three"));
  CHECK(holds(fault("{offsets = [0, 150, 0]}"), "panel.profile.every: is missing"));
}

TEST_CASE("Drawings are taken as they are, and how is told") {
  const ProfileResult svg = read("{svg = \"arc.svg\", path = \"a\"}");
  CHECK(radius(svg) == within(500, 1e-6));
  REQUIRE(svg.reading->drawing);
  CHECK_FALSE(svg.reading->drawing->fitted);
  REQUIRE_FALSE(svg.reading->notes.empty());
  CHECK(svg.reading->notes.back() == "lines and arcs of the drawing taken as they are");
  CHECK(radius(read("{dxf = \"arc.dxf\", units = \"in\", layer = \"PROFILE\"}")) == within(762, 1e-6));
  CHECK(holds(fault("{dxf = \"arc.dxf\"}"), "units"));
}

TEST_CASE("Errors name the key, or the file and its line") {
  CHECK(fault("{svg = \"arc.svg\", path = \"b\"}") ==
        "job.toml:1:17: panel.profile: no path is called \"b\"; did you mean \"a\"? the drawing has a");
  CHECK(holds(fault("{points = \"none.csv\"}"), "none.csv"));
  CHECK(holds(fault("{points = \"arc.csv\", fit = \"spline\"}"), "panel.profile.fit: read \"spline\""));
  CHECK(holds(fault("{points = \"arc.csv\", noise = \"loud\"}"), "panel.profile.noise"));
  CHECK(holds(fault("{points = \"arc.csv\", outer = \"over\"}"), "panel.profile.outer"));
  CHECK(holds(fault("{points = \"arc.csv\", start = {at = [1]}}"), "panel.profile.start.at"));
  CHECK(
      holds(fault("{points = \"arc.csv\", svg = \"arc.svg\"}"), "panel.profile.svg: is given beside points"));
  CHECK(holds(fault("{rise = 1, chord = 20, path = \"a\"}"), "panel.profile.path: has no use with rise"));
  CHECK(holds(fault("{every = 20}"), "panel.profile: is not a profile"));
}

TEST_CASE("The job keeps how its profile was read, and starts it at the origin") {
  const MemorySources files({{"arc.csv", arc_table()}});
  const Evaluation result = evaluated(
      job_text("width = 600\nprofile = {points = \"arc.csv\", fit = \"arc\"}", birch(5), kWorked), files);
  REQUIRE(result.job);
  CHECK(result.job->panel.profile.start().point == Vec2(0, 0));
  bool told = false;
  for (const std::string& note : result.job->notes) told = told || holds(note, "25 points fitted by 1 run");
  CHECK(told);
}
