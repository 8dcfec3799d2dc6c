#include "kernel/check/work.hpp"

#include <algorithm>
#include <numeric>

#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Evaluation glued(int plies, const std::string& rate = "0.5", const std::string& panel = "") {
  return evaluated(job_text(
      "width = 970\ntrim = 15\nprofile = [{line = 970}]\n" + panel,
      "spread_rate = " + rate +
          "\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = " + std::to_string(plies) + "}]",
      ""));
}

}  // namespace

TEST_CASE("Glue is spread on one line fewer than there are plies") {
  const Evaluation result = glued(6);
  INFO(only_error(result));
  REQUIRE(result.plan);
  const GlueWork& work = *result.figures.glue;
  // 1 m x 1 m with trim: five lines of one square metre.
  CHECK(work.lines == 5);
  CHECK(work.area == within(1, 1e-9));
  CHECK(work.mass == within(5 * result.job->layup.glue_row.spread / 1000, 1e-9));
  CHECK(work.spreading == within(10, 1e-9));  // 0.5 m2 a minute
}

TEST_CASE("Glue that does not stay open is spread in stages, as even as can be") {
  // Lines of 2 min each in 8 min: four at a time. 12 plies have 11 lines: 3 + 4 + 4 lines, 4 + 4 + 4 sheets.
  const Evaluation result = glued(12);
  REQUIRE(result.plan);
  const GlueWork& work = *result.figures.glue;
  REQUIRE(result.job->layup.glue_row.open == 8);
  CHECK(work.stages == std::vector<int>{4, 4, 4});
  CHECK(std::accumulate(work.stages.begin(), work.stages.end(), 0) == 12);
  const Finding& open = finding(result, "open-time");
  CHECK(open.verdict == Verdict::caution);
  CHECK(holds(open.advice, "Glue in 3 stages, stopping after plies 4 and 8 and pressing each"));
  CHECK(work.pressings == 3);
}

TEST_CASE("Two stages name the ply to stop after") {
  const Evaluation result = glued(8);
  REQUIRE(result.plan);
  CHECK(result.figures.glue->stages == std::vector<int>{4, 4});
  CHECK(
      holds(finding(result, "open-time").advice, "Glue in 2 stages, stopping after ply 4 and pressing each"));
}

TEST_CASE("Fast spreading needs no stages") {
  const Evaluation result = glued(12, "5");
  REQUIRE(result.plan);
  CHECK(result.figures.glue->stages == std::vector<int>{12});
  CHECK(finding(result, "open-time").verdict == Verdict::pass);
}

TEST_CASE("Pressings count panels and stages, against what the formers stand") {
  const Evaluation result = glued(8, "0.5", "count = 3\n");
  REQUIRE(result.plan);
  const GlueWork& work = *result.figures.glue;
  CHECK(work.pressings == 6);
  CHECK(work.total_mass == within(3 * work.mass, 1e-9));
  CHECK(work.uses == 5);
  CHECK(work.sets() == 2);
  CHECK(finding(result, "former-uses").verdict == Verdict::caution);
  CHECK(holds(finding(result, "former-uses").advice, "cut 2 sets of formers"));
  // Four lines of 2 min on average, 5 + 2 loops a former to set, and the pressing time: how many fit in 8
  // hours.
  const double each = work.spreading / 2 + work.setting + work.press;
  const int a_day = std::max(1, int(480 / each));
  CHECK(work.days == (6 + a_day - 1) / a_day);
}
