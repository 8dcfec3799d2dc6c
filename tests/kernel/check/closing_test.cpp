#include "kernel/check/closing.hpp"

#include "kernel/mechanics/closing.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const std::string kRows =
    "[timbers.plain]\nE_along = 12000\nE_across = 600\nshear = 800\npoisson = 0.4\nstrength = 100\ndensity = "
    "600\n"
    "hardwood = true\nstructural_ratio = 100\nsource = \"test\"\n";

// Inner radius 400, trim 15, straps of 2500 N at both ends 150 apart.
Evaluation bent(const std::string& plies, const std::string& more = "") {
  return evaluated(
      "data = \"rows.toml\"\n" +
          job_text("width = 920\nprofile = [{bend = 120, radius = 400}]",
                   "glue_line = 0\nplies = [{timber = \"plain\", " + plies + "}]",
                   kWorked + "[formers]\nspacing = {count = 7}\n[straps]\ntension = 2500\n" + more),
      MemorySources(std::map<std::string, std::string>{{"rows.toml", kRows}}));
}

}  // namespace

TEST_CASE("A strip closes where pressure and the end slat hold the loose sheets' moment") {
  // k sum(E t^3 / 12) at R406: 8 x 12000 x 1.5^3 / 12 / 406 = 66.5025; p = 2291.08 / (412 x 150); F
  // = 7.21465.
  CHECK(open_strip(0.0370732, 7.21465, 66.5025) == within(9.01, 0.01));
  CHECK(open_strip(0.0370732, 7.21465, 3 * 12000 * 64 / 12 / 406.0) == within(57.2, 0.05));
  CHECK(open_strip(0, 5, 10) == within(2, 1e-12));
  CHECK(open_strip(0.1, 5, 0) == 0);
  CHECK(std::isinf(open_strip(0, 0, 1)));
  // What closes a strip leaves just that strip open.
  CHECK(open_strip(0.04, 7, closing_moment(0.04, 7, 23)) == within(23, 1e-9));
}

TEST_CASE("Thin plies close within the trim, thick ones do not") {
  const Evaluation thin = bent("thickness = 1.5, count = 8");
  INFO(only_error(thin));
  REQUIRE(thin.plan);
  for (const char* id : {"closing-left", "closing-right"}) {
    CHECK(finding(thin, id).value == within(9.0, 0.05));
    CHECK(finding(thin, id).verdict == Verdict::pass);
    CHECK(finding(thin, id).limit == 15);
  }
  const Evaluation thick = bent("thickness = 4, count = 3");
  REQUIRE(thick.plan);
  const Finding& open = finding(thick, "closing-left");
  CHECK(open.value == within(57.2, 0.05));
  CHECK(open.verdict == Verdict::fail);
  // p 15^2 / 2 + 15 F = 112.39: 112.39 / 472.91 of the moment, so 4 sqrt(0.2377) = 1.95, and 2500 / 0.2377.
  CHECK(open.advice ==
        "Use plies at most 1.9 thick, pull with 10520 N (straps.tension), or give a trim of 58 and cut "
        "it off.");
}

TEST_CASE("The way out of a strip that stays open closes it") {
  const Evaluation thinner = bent("thickness = 1.9, count = 6");
  REQUIRE(thinner.plan);
  CHECK(finding(thinner, "closing-left").verdict == Verdict::pass);
}

TEST_CASE("A pack ending in a flat has nothing to close there") {
  const Evaluation result = evaluated(
      job_text("width = 920\nprofile = [{line = 100}, {bend = 90, radius = 400}]", birch(8), kWorked));
  REQUIRE(result.plan);
  CHECK(finding(result, "closing-left").value == 0);
  CHECK(finding(result, "closing-right").value > 0);
}

TEST_CASE("The glue line is a caution by advice and a fail where the job requires it") {
  const Evaluation advised = bent("thickness = 1.5, count = 8");
  const Finding& glue = finding(advised, "glue-line");
  CHECK(glue.verdict == Verdict::caution);
  CHECK(glue.value < glue.limit);
  CHECK(holds(glue.advice, "PVAc, class D3 wants 0.2 to 1 MPa; this press gives 0.0"));
  CHECK(holds(glue.advice, "Thin plies, flat and well fitting, need little"));
  Evaluation required = evaluated(job_text("width = 920\nprofile = [{bend = 120, radius = 400}]", birch(8),
                                           "[press]\npressure = \"required\"\nspringback = \"none\"\n"));
  REQUIRE(required.plan);
  CHECK(finding(required, "glue-line").verdict == Verdict::fail);
}
