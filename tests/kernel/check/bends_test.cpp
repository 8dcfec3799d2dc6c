#include "kernel/check/bends.hpp"

#include <algorithm>

#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Evaluation bent(const std::string& radius, const std::string& layup) {
  return evaluated(job_text("width = 400\nprofile = [{bend = 60, radius = " + radius + "}]", layup, kWorked));
}

bool noted(const Evaluation& result, const std::string& part) {
  const auto& notes = result.job->notes;
  return std::any_of(notes.begin(), notes.end(), [&](const std::string& n) { return holds(n, part); });
}

}  // namespace

TEST_CASE("Birch bends down to its elastic limit, with caution below the structural rules") {
  // R / t = 15290 / (2 x 114) = 67.06; 1.5 thick: fails below 100.6, caution below 240 x 1.5 = 360 (EN
  // 1995-1-1).
  int seen = 0;
  for (const auto& [radius, verdict] : {std::pair<const char*, Verdict>{"100", Verdict::fail},
                                        {"101", Verdict::caution},
                                        {"359", Verdict::caution},
                                        {"361", Verdict::pass}}) {
    CAPTURE(radius);
    const Evaluation result = bent(radius,
                                   "cover = 1\nglue_line = 0\nplies = [{timber = \"birch-yellow\", thickness "
                                   "= 1.5, count = 6}]");
    REQUIRE(result.plan);
    CHECK(finding(result, "bend-1-ply-1").verdict == verdict);
    CHECK(finding(result, "bend-1-ply-1").value == within(std::stod(radius), 1e-9));
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("A failing ply is told the thickness that would do, and that one does") {
  const Evaluation thick =
      bent("80", "cover = 1\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 6}]");
  REQUIRE(thick.plan);
  // 80 / 67.06 = 1.19.
  CHECK(holds(finding(thick, "bend-1-ply-1").advice, "Use sheets at most 1.1 thick here"));
  const Evaluation thin =
      bent("80", "cover = 1\nplies = [{timber = \"birch-yellow\", thickness = 1.1, count = 8}]");
  REQUIRE(thin.plan);
  CHECK(finding(thin, "bend-1-ply-1").verdict == Verdict::caution);
}

TEST_CASE("The maker's figure comes before the elastic limit") {
  const std::string ply =
      "cover = 1\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 6, maker_radius = ";
  const Evaluation below = bent("150", ply + "160}]"), above = bent("90", ply + "85}]");
  REQUIRE(below.plan);
  REQUIRE(above.plan);
  CHECK(finding(below, "bend-1-ply-1").verdict == Verdict::fail);
  CHECK(finding(below, "bend-1-ply-1").basis == "maker's figure, R 160");
  CHECK(finding(above, "bend-1-ply-1").verdict == Verdict::caution);
}

TEST_CASE(
    "A workshop's own ratio stands in place of the structural rules, and a wanted thickness is counted out") {
  // R 609.6 (24 in), 101.6 (4 in) thick, own rule R/t >= 100: 36 sheets of 2.8 make 100.8, R/t 217; 7.9
  // makes 77.
  const auto layup = [](const std::string& ply) {
    return "glue_line = 0\nbend_ratio = 100\nplies = [{timber = \"birch-yellow\", thickness = " + ply +
           ", total = 101.6}]";
  };
  const Evaluation thin = bent("609.6", layup("2.8"));
  REQUIRE(thin.plan);
  CHECK(thin.job->layup.plies.size() == 36);
  CHECK(thin.panel->thickness == within(100.8, 1e-9));
  CHECK(noted(thin, "36 x 2.8 = 100.8, 0.8 short of 101.6"));
  CHECK(finding(thin, "bend-1-ply-1").verdict == Verdict::pass);
  const Evaluation thick = bent("609.6", layup("7.9"));
  REQUIRE(thick.plan);
  CHECK(thick.job->layup.plies.size() == 13);
  CHECK(finding(thick, "bend-1-ply-1").verdict == Verdict::caution);
  CHECK(holds(finding(thick, "bend-1-ply-1").advice, "R/t is 77"));
}

TEST_CASE("Grain across the bend without a figure of its own is a caution") {
  const Evaluation result =
      bent("400",
           "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 4}, {timber = "
           "\"birch-yellow\", thickness = 1.5, grain = \"across\", count = 3}]");
  REQUIRE(result.plan);
  const Finding& across = finding(result, "bend-1-ply-5");
  CHECK(across.verdict == Verdict::caution);
  CHECK(holds(across.advice, "no figure for bending Yellow birch across its grain"));
  CHECK_FALSE(std::isfinite(across.limit));
}

TEST_CASE("In a hollow the outermost sheet is bent most") {
  const Evaluation result = evaluated(job_text(
      "width = 400\nprofile = [{bend = 40, radius = 300}, {bend = -40, radius = 300}]", birch(8), kWorked));
  REQUIRE(result.plan);
  CHECK(finding(result, "bend-1-ply-1").value == within(300, 1e-9));
  CHECK(finding(result, "bend-2-ply-1").value == within(300 - 12, 1e-9));
}

TEST_CASE("Plywood goes by its table, sheathing by the sheet on the formers") {
  const Evaluation result = evaluated(
      job_text("width = 400\nprofile = [{bend = 60, radius = 900}]",
               "cover = 1\nplies = [{board = \"plywood-6.5\", count = 2, grain = \"across\"}]",
               "[press]\nspringback = \"none\"\n[caul]\nkind = \"sheathed\"\nsheathing = [5, 5]\n"));
  INFO(only_error(result));
  REQUIRE(result.plan);
  const Finding& ply = finding(result, "bend-1-ply-1");
  CHECK(holds(ply.basis, "AC 43.13"));
  // Cover 1 and sheathing 5 + 5 lie inside the face.
  CHECK(finding(result, "bend-1-sheathing-1").value == within(900 - 11, 1e-9));
  CHECK(finding(result, "bend-1-sheathing-2").value == within(900 - 6, 1e-9));
}
