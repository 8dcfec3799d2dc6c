#include "kernel/check/geometry.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A sound job passes every check and each finding has its basis") {
  // Thin plies well within every limit, spread fast; a workshop's straps reach no glue's range round such a
  // curve, so it takes a glue that fills gaps.
  const Evaluation result = evaluated(job_text(
      "width = 900\nprofile = [{bend = 110, radius = 415}]",
      "glue = \"epoxy\"\nglue_line = 0\ncover = 3\nspread_rate = 2\nplies = [{timber = \"birch-yellow\", "
      "thickness = 1.5, count = 8}]",
      kWorked));
  REQUIRE(result.findings.size() >= 8);
  std::set<std::string> ids;
  for (const Finding& f : result.findings) {
    INFO(f.id);
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.basis.empty());
    CHECK(ids.insert(f.id).second);
  }
  CHECK_FALSE(any_failed(result.findings));
}

TEST_CASE("A strip that the top caul leaves bare is a caution with a pitch that would cover it") {
  const Evaluation result =
      evaluated(job_text("width = 900\nprofile = [{bend = 110, radius = 420}]", birch(8)));
  const Finding& strip = finding(result, "top-caul-short-left");
  CHECK(strip.verdict == Verdict::caution);
  CHECK(strip.value > 15);
  REQUIRE(result.plan->fitting_pitch);
  CHECK(strip.advice.find("A caul with a pitch of") == 0);
}

TEST_CASE("A caul that does not follow the curve is a fail") {
  const std::string job =
      job_text("width = 900\nprofile = [{bend = 110, radius = 415}]", birch(8),
               "[caul]\nkind = {thickness = 20, least_crown_radius = 400, least_hollow_radius = 300}\n");
  const Evaluation result = evaluated(job);
  CHECK(finding(result, "bed-caul-crown").verdict == Verdict::fail);
  CHECK(finding(result, "top-caul-crown").verdict == Verdict::pass);
  CHECK(any_failed(result.findings));
}

TEST_CASE("No trim, no pins: a caution") {
  const Evaluation result =
      evaluated(job_text("width = 900\ntrim = 0\nprofile = [{bend = 100, radius = 420}]", birch(8)));
  CHECK(finding(result, "locating-pins").verdict == Verdict::caution);
}

TEST_CASE("Findings are sorted worst first and otherwise keep their order") {
  const Finding pass{"a", "", 0, 0, "", Verdict::pass, "", "", ""},
      caution{"b", "", 0, 0, "", Verdict::caution, "", "", ""},
      fail{"c", "", 0, 0, "", Verdict::fail, "", "", ""},
      later{"d", "", 0, 0, "", Verdict::caution, "", "", ""};
  const auto sorted = worst_first({pass, caution, fail, later});
  REQUIRE(sorted.size() == 4);
  CHECK(sorted[0].id == "c");
  CHECK(sorted[1].id == "b");
  CHECK(sorted[2].id == "d");
  CHECK(sorted[3].id == "a");
  CHECK(any_failed(sorted));
}
