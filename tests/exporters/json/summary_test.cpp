#include "exporters/json/summary.hpp"

#include <catch2/catch.hpp>

#include "exporters/json/numbers.hpp"
#include "kernel/plugin/memory.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Json summary_of(const std::string& text) {
  const Evaluation result = evaluated(text);
  MemorySink sink;
  Progress progress;
  sink.write("parts/beam.step", "");
  sink.write("parts/beam-2.step", "");
  sink.write("drawings/beam.svg", "");
  SummaryExporter().write({*result.job, *result.plan, result.findings, progress, result.figures}, sink);
  return Json::parse(sink.files().at("summary.json"));
}

const std::string kJob = "title = \"</svg>\\\"'../ä板\"\n" +
                         job_text("width = 900\ntrim = 0\nprofile = [{bend = 120, radius = 400}]", birch(8),
                                  kWorked + "[formers]\nspacing = {count = 4}\n");

}  // namespace

TEST_CASE("The summary holds the keys that machines rely on") {
  const Json json = summary_of(kJob);
  CHECK(json["schema"] == 1);
  CHECK(json["title"] == "</svg>\"'../ä板");
  CHECK(json["units"] == "mm");
  CHECK(json["panel"]["girth"]["inner"].get<double>() == Approx(837.758040957));
  CHECK(json["panel"]["released"]["runs"].size() == 1);
  CHECK(json["panel"]["pressed"]["runs"][0]["radius"] == 400);
  CHECK(json["panel"]["pressed"]["runs"][0]["turn"] == 120);
  CHECK(json["springback"]["ratio"] == 0);
  CHECK(json["press"]["method"] == "one-part");
  CHECK(json["press"]["stations"].size() == 4);
  CHECK(json["press"]["contact"]["lower"]["runs"][0]["radius"].is_null());
  CHECK(json["press"]["contact"]["lower"]["runs"][0]["turn"] == 0);
  CHECK(json["press"]["straps"].size() == 2);
  CHECK(json["press"]["straps"][0]["mark"][0].get<double>() < 0);
  CHECK(json["press"]["straps"][0]["exit_deg"] == 25);
  CHECK(json["blanks"].size() == 8);
  CHECK(json["findings"].size() >= 8);
}

TEST_CASE("Parts list their bores and only their own files") {
  const Json json = summary_of(kJob);
  bool seen = false;
  for (const Json& part : json["parts"]) {
    if (part["name"] != "beam") continue;
    seen = true;
    CHECK(part["count"] == 4);
    CHECK(part["kind"] == "beam");
    CHECK(part["files"] == Json::array({"parts/beam.step", "drawings/beam.svg"}));
    REQUIRE(part["holes"].size() == 13);
    CHECK(part["holes"][0]["kind"] == "counterbored");
    CHECK(part["holes"][0]["depth"].is_null());
    CHECK(part["holes"][0]["counterbore"]["depth"] == 50);
    // Files are moved by `origin`: their lower left is the origin.
    CHECK(part["origin"][0].get<double>() == Approx(521.5003674));
  }
  CHECK(seen);
}

TEST_CASE("Numbers are rounded to 1e-9 and never negative zero") {
  CHECK(json_number(-1e-12).dump() == "0");
  CHECK(json_number(0.1 + 0.2).dump() == "0.3");
  CHECK(json_number(837.758040957278).dump() == "837.758040957");
  CHECK(json_number(NAN).is_null());
}
