#include "kernel/check/slats.hpp"

#include <cmath>

#include "kernel/press/stations.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Evaluation pressed(const std::string& caul, const std::string& formers = "", const std::string& cover = "3") {
  return evaluated(job_text("width = 900\nprofile = [{bend = 70, radius = 400}]",
                            "glue_line = 0\ncover = " + cover +
                                "\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 8}]",
                            "[caul]\nkind = " + caul + "\n[formers]\n" + formers));
}

const std::string kSlats = "{thickness = 28, pitch = 50, coverage = 0.9}";

}  // namespace

TEST_CASE("Automatic spacing is the widest that presses evenly enough") {
  const Evaluation found = pressed(kSlats);
  REQUIRE(found.plan);
  const std::size_t formers = found.plan->sections.size();
  CHECK(found.figures.pressure->straps.even() >= 0.6);
  const Evaluation fewer = pressed(kSlats, "spacing = {count = " + std::to_string(formers - 1) + "}\n");
  REQUIRE(fewer.plan);
  CHECK(fewer.figures.pressure->straps.even() < 0.6);
  CHECK(finding(fewer, "width-even").verdict == Verdict::caution);
  CHECK(finding(found, "width-even").verdict == Verdict::pass);
}

TEST_CASE("Asking for a more even pressure never takes fewer formers, thicker slats never more") {
  std::size_t last = 0;
  int seen = 0;
  for (const char* even : {"0.3", "0.5", "0.6", "0.7", "0.8"}) {
    const Evaluation result = pressed(kSlats, std::string("even = ") + even + "\n");
    REQUIRE(result.plan);
    CHECK(result.plan->sections.size() >= last);
    last = result.plan->sections.size();
    ++seen;
  }
  last = 1000;
  for (const char* thickness : {"20", "28", "36", "50"}) {
    const Evaluation result =
        pressed(std::string("{thickness = ") + thickness + ", pitch = 50, coverage = 0.9}");
    REQUIRE(result.plan);
    CHECK(result.plan->sections.size() <= last);
    last = result.plan->sections.size();
    ++seen;
  }
  CHECK(seen == 9);
}

TEST_CASE("Automatic spacing never exceeds 300, however stiff the slats") {
  const Evaluation result = pressed("{thickness = 60, pitch = 50, coverage = 0.9, EI = 1e12}");
  REQUIRE(result.plan);
  CHECK(result.plan->spacing.pitch <= kAutomaticPitch + 1e-9);
  CHECK(result.plan->sections.size() == 4);  // (930 - 50) / 300 = 2.93
}

TEST_CASE("Flat slats make facets of w^2 / 8R on the tighter of both cauls") {
  // Bed slats: their upper side meets the cover at R 400 as pressed less springback's share and cover 3.
  const Evaluation result = pressed(kSlats);
  REQUIRE(result.plan);
  const double pressed_inside =
      1 / result.plan->neutral.runs()[1].curvature - result.plan->panel.neutral_height;
  const double facet = 45.0 * 45 / (8 * (pressed_inside - 3));
  CHECK(finding(result, "facets").value == within(facet, 1e-9));
  CHECK(finding(result, "facets").limit == within(0.6, 1e-12));
  CHECK(finding(result, "facets").verdict == Verdict::caution);
  // The way out: 43 wide at most.
  CHECK(holds(finding(result, "facets").advice, "Use slats at most 43 wide"));
  const Evaluation narrow = pressed("{thickness = 28, pitch = 47, coverage = 0.914}");
  REQUIRE(narrow.plan);
  CHECK(finding(narrow, "facets").verdict == Verdict::pass);
}

TEST_CASE("Pressure under a gap falls with the gap and rises with the cover sheet") {
  const Evaluation result = pressed(kSlats);
  REQUIRE(result.plan);
  const Job& job = *result.job;
  const Panel& panel = *result.panel;
  double last = 1;
  int seen = 0;
  for (const double gap : {1.0, 3.0, 6.0, 10.0, 20.0}) {
    const double even = lagging_evenness(job, panel, 40 + gap, 40);
    CHECK(even < last);
    last = even;
    ++seen;
  }
  CHECK(seen == 5);
  CHECK(lagging_evenness(job, panel, 40, 40) == 1);
  const Evaluation stiff = pressed(kSlats, "", "6");
  REQUIRE(stiff.plan);
  CHECK(lagging_evenness(*stiff.job, *stiff.panel, 50, 45) > lagging_evenness(job, panel, 50, 45));
}

TEST_CASE("Close lagging has no gaps to speak of") {
  const Evaluation result = evaluated(job_text("width = 900\nprofile = [{bend = 70, radius = 400}]", birch(8),
                                               "[caul]\nlagging = \"close\"\n"));
  REQUIRE(result.plan);
  REQUIRE(result.findings.size() > 20);
  for (const Finding& f : result.findings) CHECK(f.id != "lagging-even");
}

TEST_CASE("A sheathed mould without straps is spaced by the sag under what the glue wants") {
  const auto sheathed = [](const std::string& formers) {
    return evaluated(job_text("width = 600\nprofile = [{bend = 40, radius = 900}]", birch(8),
                              "[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\n[formers]\n" + formers));
  };
  const Evaluation found = sheathed("");
  INFO(only_error(found));
  REQUIRE(found.plan);
  CHECK(finding(found, "slat-sag").verdict == Verdict::pass);
  const std::size_t formers = found.plan->sections.size();
  const Evaluation fewer = sheathed("spacing = {count = " + std::to_string(formers - 1) + "}\n");
  REQUIRE(fewer.plan);
  CHECK(finding(fewer, "slat-sag").verdict == Verdict::caution);
}

TEST_CASE("Straps on every second former need the least number that presses evenly enough") {
  const auto every = [](const std::string& formers) {
    return evaluated(job_text(
        "width = 900\nprofile = [{bend = 70, radius = 400}]", birch(8),
        "[caul]\nkind = \"slatted-hardwood-35\"\n[beams]\nevery = 2\n[formers]\neven = 0.8\n" + formers));
  };
  const Evaluation found = every("");
  REQUIRE(found.plan);
  REQUIRE(found.figures.pressure->straps.even() >= 0.8);
  int seen = 0;
  for (std::size_t count = 5; count < found.plan->sections.size(); ++count, ++seen) {
    const Evaluation fewer = every("spacing = {count = " + std::to_string(count) + "}\n");
    REQUIRE(fewer.plan);
    CHECK(fewer.figures.pressure->straps.even() < 0.8);
  }
  CHECK(seen >= 3);
}
