// Angles of normals to the pull: shares, wedging, undercuts, and what a joiner is told to do.
#include "kernel/check/pull.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "shared/number.hpp"
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
      "more than 45 degrees from the pull, and the pressure is 0.96 to 1.35 of an even one.");
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
  CHECK(only_error(evaluated(job_text(panel("[{bend = 200, radius = 300}]"), birch(6), two_part()))) ==
        "job.toml: undercut: bend 1 by 10 degrees at (-299.9, 0); bend 1 by 10 degrees at (299.9, 0), across "
        "and along the pull from the chord's middle; no axis "
        "clears it: its normals turn through 200 degrees, at most 180 come apart; press it on one mould "
        "(press.method = \"one-part\"), make the panel in two pieces or turn less");
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
      "crowned-flat: a crowned flat press is for panels without a bend); make the panel in pieces that turn "
      "less, or change the profile");
}

namespace {

// A short lip at a long flat: the bisector of its normals leaves most of it without pressure.
const std::string kLip = "[{line = 50}, {bend = -85, radius = 100}, {line = 600}]";

Evaluation pulled(const std::string& profile, const std::string& press) {
  return evaluated(job_text(panel(profile, "trim = 15"), birch(8), two_part(press)));
}

// The number behind a key in a sentence, 0 where the key is not named.
double value_of(const std::string& text, const std::string& key) {
  const auto at = text.find(key + " = ");
  if (at == std::string::npos) return 0;
  return std::stod(text.substr(at + key.size() + 3));
}

}  // namespace

TEST_CASE("Whoever follows the way out of an undercut gets a press that lifts nowhere") {
  const std::string error = only_error(pulled(kLip, "pull = -50"));
  INFO(error);
  CHECK(holds(error, "undercut: line 1 and bend 1 by 33.1 degrees"));
  CHECK(holds(error, "set press.pull = \"square-to-chord\", which clears it"));
  const Evaluation followed = pulled(kLip, "pull = \"square-to-chord\"");
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
  CHECK(holds(wall.advice, "No axis does better and presses all over evenly: make its walls less steep."));
  CHECK_FALSE(holds(wall.advice, "one mould"));
}

TEST_CASE("A draft of more than 20 degrees is the limit of a normal's angle") {
  const Evaluation result = evaluated(
      job_text(panel(kEqualL), birch(8), two_part("pull = 2\ndraft = 44", "kind = {thickness = 16}")));
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

TEST_CASE("Whoever sets the best pull that is named gets its figures, and no check gets worse by it") {
  // The most even pull of this line lies at the edge of the axes that leave a draft of 5.
  const std::string profile =
      "[{line = 500}, {bend = 60, radius = 120}, {line = 60}, {bend = 58.7, radius = 120}, {line = 80}]";
  const std::string centre = "face = \"centre\"\ntrim = 0";
  const auto with = [&](const std::string& press) {
    return evaluated(job_text(panel(profile, centre), birch(6), two_part(press)));
  };
  const Evaluation before = with("pull = 20");
  REQUIRE(before.plan);
  REQUIRE(before.plan->pull->best);
  const PullChoice& best = *before.plan->pull->best;
  const std::string keys = pull_keys(best);
  const Evaluation after = with("pull = " + std::to_string(value_of(keys, "press.pull")) +
                                "\npull_at = " + std::to_string(value_of(keys, "press.pull_at")));
  REQUIRE(after.plan);
  const PullChoice& chosen = after.plan->pull->chosen().choice;
  CHECK(chosen.least == within(best.least, 1e-6));
  CHECK(chosen.greatest == within(best.greatest, 1e-6));
  int angles = 0;
  for (const Finding& f : after.findings)
    if (f.id.starts_with("pull-angle")) {
      CHECK(f.verdict != Verdict::fail);
      ++angles;
    }
  CHECK(angles == 5);
}

TEST_CASE("A U that turns exactly half round comes off along one axis, which is named") {
  const std::string u =
      "[{line = 300}, {bend = 90, radius = 80}, {line = 200}, {bend = 90, radius = 80}, {line = 300}]";
  const std::string error = only_error(evaluated(job_text(panel(u), birch(6), two_part("pull = 5"))));
  CHECK(holds(error, "set press.pull = 0 (or \"bisector\"), which clears it, though with less draft"));
  const Evaluation followed = evaluated(job_text(panel(u), birch(6), two_part("pull = 0")));
  CHECK(followed.plan);
}

TEST_CASE("Where no short number keeps to the one axis that clears, the bisector is named") {
  const std::string u =
      "[{line = 300}, {bend = 90, radius = 80}, {line = 200}, {bend = 90, radius = 90}, {line = 300}]";
  const std::string error = only_error(evaluated(job_text(panel(u), birch(6), two_part("pull = 5"))));
  INFO(error);
  CHECK(holds(error, "set press.pull = "));
  CHECK(holds(error, "\"bisector\""));
  const double axis = value_of(error, "press.pull");
  const std::string pull = holds(error, "press.pull = \"") ? "\"bisector\"" : number(axis, 9);
  CHECK(evaluated(job_text(panel(u), birch(6), two_part("pull = " + pull))).plan);
}

TEST_CASE("A range of axes as narrow as rounding is searched and left again") {
  // Normals that span exactly 180 less twice the draft.
  int seen = 0;
  for (const auto& [profile, press] :
       {std::pair<std::string, std::string>{kUnequalL, "draft = 45"},
        {"[{line = 200}, {bend = 85, radius = 120}, {line = 180}, {bend = 85, radius = 120}, {line = 210}]",
         ""},
        {"[{line = 100}, {bend = -80, radius = 200}, {bend = -90, radius = 350}, {line = 250}, {bend = 80, "
         "radius = 350}]",
         ""}}) {
    const Evaluation result = evaluated(job_text(panel(profile), birch(9), two_part(press)));
    CHECK((result.plan || result.errors.size() == 1));
    ++seen;
  }
  CHECK(seen == 3);
}
