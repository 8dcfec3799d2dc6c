// Angles of normals to the pull: shares, wedging, undercuts, and what a joiner is told to do.
#include "kernel/check/pull.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/two_part_jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE(
    "Two legs of 90 degrees pulled at 45 degrees share alike, pulled along one leg that leg gets nothing") {
  // cos 45 degrees = 0.70711; a leg along the pull has its normal square to it: cos 90 degrees = 0.
  const Evaluation fair = evaluated(job_text(panel(kEqualL), birch(8), two_part()));
  REQUIRE(fair.plan);
  const auto& runs = fair.plan->pull->runs;
  REQUIRE(runs.size() == 3);
  CHECK(runs[0].least_share() == within(std::sqrt(0.5), 1e-12));
  CHECK(runs[2].least_share() == within(std::sqrt(0.5), 1e-12));
  CHECK(runs[1].greatest_share() == within(1, 1e-12));
  CHECK(finding(fair, "pull-angle-1").verdict == Verdict::pass);
  const Evaluation along_leg = evaluated(job_text(panel(kEqualL), birch(8), two_part("pull = 45")));
  REQUIRE(along_leg.plan);
  CHECK(along_leg.plan->pull->runs[0].least_share() == within(0, 1e-12));
  CHECK(along_leg.plan->pull->runs[2].least_share() == within(1, 1e-12));
  const Finding& steep = finding(along_leg, "pull-angle-1");
  CHECK(steep.verdict == Verdict::fail);
  CHECK(steep.value == within(90, 1e-9));
  CHECK(
      steep.advice ==
      "Its steepest part gets 0 of the pull and does not come off. Set press.pull = 0: no normal then leans "
      "more than 45 degrees from the pull.");
}

TEST_CASE("A wall with 7 degrees of draft gets 0.122 of the pull and wedges") {
  // cos 83 degrees = 0.12187.
  const Evaluation result = evaluated(job_text(
      panel(
          "[{line = 200}, {bend = 83, radius = 100}, {line = 300}, {bend = 83, radius = 100}, {line = 200}]"),
      birch(6), two_part("", "kind = \"bare\"")));
  REQUIRE(result.plan);
  CHECK(result.plan->pull->runs.front().least_share() == within(0.12187, 5e-6));
  CHECK(finding(result, "pull-angle-1").verdict == Verdict::caution);
  CHECK(finding(result, "pull-angle-3").verdict == Verdict::pass);
}

TEST_CASE("An undercut names the run, the angle, the place and the axis that clears it, if there is one") {
  CHECK(
      only_error(evaluated(job_text(panel("[{bend = 200, radius = 300}]"), birch(6), two_part()))) ==
      "job.toml: undercut: bend 1 by 10 degrees at (-299.9, 0); bend 1 by 10 degrees at (299.9, 0), across "
      "and along the pull from the chord's middle; no axis "
      "clears it: its normals turn through 200 degrees, at most 180 come apart; make the panel in two pieces "
      "or turn less");
  CHECK(only_error(evaluated(job_text(panel("[{line = 340}, {bend = 100, radius = 60}, {line = 340}]"),
                                      birch(6), two_part("pull = 45")))) ==
        // Chord from the triangle of the legs: 2 (340 + 64.5 tan 50) cos 50 = 535.93, half of it at 45
        // degrees down.
        "job.toml: undercut: line 1 and bend 1 by 5 degrees at (-189.5, -189.5), across and along the pull "
        "from the chord's middle; set press.pull = 0 (or "
        "\"bisector\"), which clears it");
  CHECK(
      only_error(
          evaluated(job_text(panel("[{bend = -100, radius = 300}, {bend = -100, radius = 400}]"), birch(6),
                             "[press]\nspringback = \"none\"\n[caul]\nkind = \"bare\"\n"))) ==
      "job.toml: press.method: no press method suits this panel (one-part: a strap lifts off a hollow bend; "
      "two-part: its normals turn through 200 degrees, and an upper mould comes off at most 180; "
      "crowned-flat: a crowned flat press is for panels without a bend); change the profile");
}

namespace {

// A short lip at a long flat: the bisector of its normals leaves most of it without pressure.
const std::string kLip = "[{line = 50}, {bend = -85, radius = 100}, {line = 600}]";

Evaluation pulled(const std::string& profile, const std::string& press) {
  return evaluated(job_text(panel(profile, "trim = 15"), birch(8), two_part(press)));
}

// The number behind a key in a sentence.
double value_of(const std::string& text, const std::string& key) {
  const auto at = text.find(key + " = ");
  if (at == std::string::npos) return NAN;
  return std::stod(text.substr(at + key.size() + 3));
}

}  // namespace

TEST_CASE("Whoever follows the way out of an undercut gets a press that lifts nowhere") {
  const std::string error = only_error(pulled(kLip, "pull = -50"));
  INFO(error);
  CHECK(holds(error, "undercut: line 1 and bend 1 by 33.1 degrees"));
  const double axis = value_of(error, "press.pull"), at = value_of(error, "press.pull_at");
  REQUIRE(std::isfinite(axis));
  REQUIRE(std::isfinite(at));
  const Evaluation followed =
      pulled(kLip, "pull = " + std::to_string(axis) + "\npull_at = " + std::to_string(at));
  REQUIRE(followed.plan);
  CHECK(finding(followed, "seating-lift").verdict == Verdict::pass);
}

TEST_CASE(
    "A wedging wall is not sent to an axis under which the pack gets no pressure, nor a hollow to one "
    "mould") {
  const Evaluation result = pulled(kLip, "");
  REQUIRE(result.plan);
  const Finding& wall = finding(result, "pull-angle-1");
  CHECK(wall.verdict == Verdict::caution);
  CHECK(holds(wall.advice, "No axis does better and presses all over: make its walls less steep."));
  CHECK_FALSE(holds(wall.advice, "one mould"));
}

TEST_CASE("A draft of more than 20 degrees is the limit of a normal's angle") {
  const Evaluation result =
      evaluated(job_text(panel(kEqualL), birch(8), two_part("pull = 2\ndraft = 44", "kind = {thickness = 16}")));
  REQUIRE(result.plan);
  const Finding& leg = finding(result, "pull-angle-1");
  CHECK(leg.value == within(47, 1e-9));
  CHECK(leg.limit == within(46, 1e-12));
  CHECK(leg.verdict == Verdict::fail);
}

TEST_CASE("A straight run presses with one share of the pull, a bend with a range") {
  const Evaluation result = evaluated(job_text(panel(kEqualL), birch(8), two_part()));
  CHECK(finding(result, "pull-angle-1").advice == "presses with 0.7071 of the pull");
  CHECK(finding(result, "pull-angle-2").advice == "presses with 0.7071 to 1 of the pull");
}
