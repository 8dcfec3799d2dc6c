#include "kernel/check/pressure.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// The symmetric crown of the worked cases: inner face 120 degrees R400, 12 thick, straps 150 apart with 2500
// N.
Evaluation crown(const std::string& more = "", const std::string& profile = "{bend = 120, radius = 400}") {
  return evaluated(job_text("width = 950\ntrim = 0\nprofile = [" + profile + "]", birch(8),
                            kWorked + "[formers]\nspacing = {count = 7}\n[straps]\ntension = 2500\n" + more));
}

const PressureMap& map_of(const Evaluation& result) {
  if (!result.figures.pressure) throw std::runtime_error("no map: " + only_error(result));
  return *result.figures.pressure;
}

}  // namespace

TEST_CASE("Straps hold the tension worked by hand where the pack begins and in its middle") {
  // 2500 e^(-0.2 x 25 deg) = 2291.08, 2500 e^(-0.2 x 85 deg) = 1858.16.
  const Evaluation result = crown();
  REQUIRE(result.plan);
  const auto pull = strap_pull(*result.job, *result.plan);
  REQUIRE(pull);
  CHECK(pull->pitch == within(150, 1e-9));
  const double girth = result.plan->neutral.girth();
  CHECK(pull->tension(on_strap(*result.plan, *pull, 0)) == within(2291.08, 0.005));
  CHECK(pull->tension(on_strap(*result.plan, *pull, girth / 2)) == within(1858.16, 0.005));
  CHECK(pull->tension(on_strap(*result.plan, *pull, girth)) == within(2291.08, 0.005));
  // 2 x 2500 sin(12.5 deg) / 150.
  CHECK(pull->end_force(true) == within(7.214654, 1e-6));
}

TEST_CASE("Pressure on the face is tension times curvature, shared by the width") {
  const Evaluation result = crown();
  const PressureMap& map = map_of(result);
  // Seven straps over 950: 7 x 2291.08 / (412 x 950) at the ends, 7 x 1858.16 / (412 x 950) in the middle.
  CHECK(map.along.front() == within(7 * 2291.08 / (412 * 950), 1e-7));
  const double least = *std::min_element(map.along.begin(), map.along.end());
  CHECK(least == within(7 * 1858.16 / (412 * 950), 1e-7));
  CHECK(map.girth.back() == within(862.8908, 1e-4));
  CHECK(map.width.front() == 0);
  CHECK(map.width.back() == 950);
  REQUIRE(map.value.size() == map.girth.size());
  // Every row is the mean times what the slats make of it.
  const auto middle =
      std::find_if(map.width.begin(), map.width.end(), [](double z) { return z >= 475 - 1e-9; });
  REQUIRE(middle != map.width.end());
  CHECK(map.value.front()[std::size_t(middle - map.width.begin())] ==
        within(map.along.front() * map.straps.at(*middle) / map.straps.mean, 1e-12));
}

TEST_CASE("Pressure scales with tension") {
  const PressureMap once = map_of(crown());
  const Evaluation doubled =
      evaluated(job_text("width = 950\ntrim = 0\nprofile = [{bend = 120, radius = 400}]", birch(8),
                         kWorked + "[formers]\nspacing = {count = 7}\n[straps]\ntension = 5000\n"));
  const PressureMap& twice = map_of(doubled);
  CHECK(twice.least == within(2 * once.least, 1e-12));
  CHECK(twice.mean == within(2 * once.mean, 1e-12));
  CHECK(twice.greatest == within(2 * once.greatest, 1e-12));
}

TEST_CASE("A mirrored job has the mirrored map") {
  const PressureMap a =
      map_of(crown("", "{line = 100}, {bend = 70, radius = 380}, {bend = 25, radius = 900}"));
  const PressureMap b =
      map_of(crown("", "{bend = 25, radius = 900}, {bend = 70, radius = 380}, {line = 100}"));
  REQUIRE(a.girth.size() == b.girth.size());
  int seen = 0;
  for (std::size_t i = 0; i < a.girth.size(); ++i) {
    const std::size_t k = a.girth.size() - 1 - i;
    CHECK(a.girth[i] == within(b.girth.back() - b.girth[k], 1e-6));
    for (std::size_t j = 0; j < a.width.size(); ++j, ++seen)
      CHECK(a.value[i][j] == within(b.value[k][a.width.size() - 1 - j], 1e-9));
  }
  CHECK(seen >= 500);
  CHECK(a.mean == within(b.mean, 1e-9));
}

TEST_CASE("Flats are pressed by their clamps, short straights by nothing") {
  const Evaluation result = crown("", "{line = 200}, {bend = 90, radius = 400}, {line = 50}");
  const PressureMap& map = map_of(result);
  // One clamp of 1500 on each of seven formers over 200 x 950; the 50 counts as no flat.
  CHECK(map.along.front() == within(7 * 1500.0 / (200 * 950), 1e-9));
  CHECK(map.along.back() == 0);
  CHECK(map.least == 0);
  CHECK(map.least_girth > 200);
}

TEST_CASE("Nothing is pressed where a strap spans a hollow") {
  const Evaluation hollow = evaluated(job_text(
      "width = 950\ntrim = 0\nprofile = [{bend = 60, radius = 400}, {bend = -15, radius = 900}, {bend = 60, "
      "radius = 400}]",
      birch(8), "[press]\nmethod = \"one-part\"\nspringback = \"none\"\n[caul]\nkind = {thickness = 35}\n"));
  const PressureMap& map = map_of(hollow);
  CHECK(map.least == 0);
  const std::size_t middle = map.girth.size() / 2;
  CHECK(map.along[middle] == 0);
  CHECK(map.along.front() > 0);
  // It leaves the first crown where that has turned back half of the hollow: pressure ends inside the bend.
  double ends = 0;
  for (std::size_t i = 0; i < middle; ++i)
    if (map.run[i] == 0 && map.along[i] > 0) ends = map.girth[i];
  const double bend = 412 * radians(60);
  CHECK(ends < bend);
  CHECK(ends > bend / 2);
}

TEST_CASE("A two-part press is pressed by its seating, spread by its cauls") {
  const Evaluation result = evaluated(
      job_text("width = 600\nprofile = [{line = 300}, {bend = 90, radius = 63}, {line = 300}]", birch(8),
               "[press]\nmethod = \"two-part\"\nspringback = \"none\"\n[caul]\nkind = {thickness = 16}\n"));
  REQUIRE(result.plan);
  const PressureMap& map = map_of(result);
  const Seating& seating = result.plan->seated->seating;
  const double least = *std::min_element(map.along.begin(), map.along.end());
  const double greatest = *std::max_element(map.along.begin(), map.along.end());
  CHECK(least == within(seating.least(), 1e-9));
  CHECK(greatest == within(seating.greatest(), 1e-9));
  CHECK(map.greatest > greatest);
}

TEST_CASE("A press without straps has no map, and asks for the glue's force over the pack") {
  // 1200 x 600 at 150 psi (1.034 MPa): 744.5 kN, 497 clamps of 1500 N. Figures of a published clamping guide
  // for hardwood: 150 psi times the area.
  const std::string rows =
      "[glues.hard]\nlabel = \"Hardwood glue\"\nclass = \"D2\"\nkind = \"pvac\"\nwaterproof = false\ncreeps "
      "= true\n"
      "gap_filling = false\nglue_line = 0\npressure_low = 1.034\npressure_high = 1.7\n"
      "spread = 150\nfaces = 1\nopen_time = 8\nclosed_time = 10\npress_time = 60\ncure_time = 24\n"
      "least_temperature = 10\nsource = \"test\"\n";
  const Evaluation result = evaluated(
      "data = \"rows.toml\"\n" +
          job_text("width = 600\ntrim = 0\nprofile = [{line = 1200}]",
                   "glue = \"hard\"\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 8}]",
                   "[press]\nmethod = \"one-part\"\n[caul]\nkind = \"bare\"\n"),
      MemorySources(std::map<std::string, std::string>{{"rows.toml", rows}}));
  INFO(only_error(result));
  REQUIRE(result.plan);
  CHECK_FALSE(result.figures.pressure);
  const Finding& glue = finding(result, "glue-force");
  CHECK(glue.value == within(744.48, 0.01));
  CHECK(holds(glue.advice, "744.5 kN over the pack: 497 clamps of 1500 N, more than anyone sets in time"));
}

TEST_CASE("A stack of boards presses evenly along the width") {
  const Evaluation result = evaluated(job_text(
      "width = 500\nprofile = [{line = 60}, {bend = 45, radius = 420}, {line = 80}, {bend = -40, radius = "
      "480}, {line = 90}]",
      birch(8), "[press]\nmethod = \"two-part\"\n[caul]\nkind = \"bare\"\n[formers]\nspacing = 18\n"));
  REQUIRE(result.plan);
  CHECK(map_of(result).straps.even() == within(1, 1e-3));
}
