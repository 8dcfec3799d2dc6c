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
  // R / t = 13900 / (2 x 114) = 60.96 (bending modulus and rupture of the Wood Handbook); 1.5 thick: fails
  // below 91.4, caution below 240 x 1.5 = 360 (EN 1995-1-1).
  int seen = 0;
  for (const auto& [radius, verdict] : {std::pair<const char*, Verdict>{"91", Verdict::fail},
                                        {"92", Verdict::caution},
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
  // 80 / 60.96 = 1.31.
  CHECK(holds(finding(thick, "bend-1-ply-1").advice, "Use sheets at most 1.3 thick here"));
  const Evaluation thin =
      bent("80", "cover = 1\nplies = [{timber = \"birch-yellow\", thickness = 1.3, count = 7}]");
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
      bent("300",
           "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 4}, {timber = "
           "\"birch-yellow\", thickness = 1.5, grain = \"across\", count = 3}]");
  REQUIRE(result.plan);
  const Finding& across = finding(result, "bend-1-ply-5");
  CHECK(across.verdict == Verdict::caution);
  CHECK(holds(across.advice, "no figure for bending Yellow birch across its grain"));
  CHECK_FALSE(std::isfinite(across.limit));
}

TEST_CASE("Grain across a bend too slack to matter passes without a figure") {
  // R/t 400 / 1.5 = 267, above the 240 from which EN 1995-1-1 counts full strength.
  const Evaluation result =
      bent("400",
           "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 4}, {timber = \"birch-yellow\", "
           "thickness = 1.5, grain = \"across\", count = 3}]");
  REQUIRE(result.plan);
  CHECK(finding(result, "bend-1-ply-5").verdict == Verdict::pass);
}

TEST_CASE("Sheets that differ in the maker's figure alone are judged apart") {
  const Evaluation result = bent(
      "292",
      "glue_line = 0\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 4, maker_radius = 100}, "
      "{timber = \"birch-yellow\", thickness = 1.5, count = 2, maker_radius = 1000}]");
  REQUIRE(result.plan);
  CHECK(finding(result, "bend-1-ply-1").verdict == Verdict::caution);
  CHECK(finding(result, "bend-1-ply-5").verdict == Verdict::fail);
}

TEST_CASE("A sheet that bends the other way is told to be turned, and then passes") {
  const std::string ply = "cover = 1\nplies = [{board = \"bending-plywood-5\", count = 2";
  const Evaluation stiff = bent("260", ply + "}]"), turned = bent("260", ply + ", grain = \"across\"}]");
  REQUIRE(stiff.plan);
  REQUIRE(turned.plan);
  CHECK(finding(stiff, "bend-1-ply-1").verdict == Verdict::fail);
  CHECK(holds(finding(stiff, "bend-1-ply-1").advice, "Or turn its grain by a quarter"));
  CHECK(finding(turned, "bend-1-ply-1").verdict == Verdict::pass);
}

TEST_CASE("A plywood's way out comes from the table of the thinner sheets") {
  const Evaluation thick = bent("600", "cover = 1\nplies = [{board = \"plywood-12\", count = 2}]");
  REQUIRE(thick.plan);
  const std::string advice = finding(thick, "bend-1-ply-1").advice;
  const auto at = advice.find("at most ");
  REQUIRE(at != std::string::npos);
  const double most = std::stod(advice.substr(at + 8));
  CHECK(most > 4);  // aircraft plywood of 0.185 in (4.7) stands 20 in (508)
  const Evaluation thin =
      bent("600", "cover = 1\nplies = [{board = \"plywood-12\", thickness = " + std::to_string(most) +
                      ", count = 3}]");
  REQUIRE(thin.plan);
  CHECK(finding(thin, "bend-1-ply-1").verdict == Verdict::pass);
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
