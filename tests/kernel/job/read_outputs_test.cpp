#include "kernel/job/read_outputs.hpp"

#include <catch2/catch.hpp>

#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// The [outputs] table begins at line 6, its keys at line 7.
std::string with(const std::string& keys) {
  return "[panel]\nwidth = 400\nprofile = [{bend = 60, radius = 400}]\n[layup]\n"
         "plies = [{timber = \"birch-yellow\", thickness = 1.5, count = 6}]\n[outputs]\n" +
         keys + "\n";
}

JobResult read(const std::string& keys) {
  Registry registry;
  add_press_methods(registry);
  return read_job(with(keys), "job.toml", registry.keys(), MemorySources());
}

OutputSpec outputs(const std::string& keys) {
  const JobResult result = read(keys);
  if (!result.job) throw std::runtime_error(result.errors.front().what());
  return result.job->outputs;
}

std::string refusal(const std::string& keys) {
  const JobResult result = read(keys);
  return result.errors.size() == 1 ? result.errors.front().what()
                                   : "(" + std::to_string(result.errors.size()) + " errors)";
}

}  // namespace

TEST_CASE("a job that says nothing about outputs has every default") {
  const OutputSpec out = outputs("");
  CHECK(out.step == "ap214");
  CHECK(out.dxf == "r2000");
  CHECK(out.paper == "a3");
  CHECK(out.only.empty());
  CHECK(out.labels);
  CHECK(out.aids);
  CHECK(!out.sheet);
  CHECK(out.cutter == 6);
  CHECK(out.spacing == 8);
  CHECK(out.margin == 15);
  CHECK(!out.grain);
  CHECK(out.kerf == 4);
  CHECK(out.lengths == std::vector<double>{2400, 3000, 3600, 4200, 4800});
}

TEST_CASE("parts nearer than the cutter and half a millimetre are refused with the least that will do") {
  CHECK(refusal("spacing = 4") ==
        "job.toml:7:11: outputs.spacing: parts 4 apart stay joined by less than a cutter of 6; give at least "
        "6.5, the cutter and 0.5, or a thinner outputs.cutter");
  CHECK(refusal("spacing = 6") ==
        "job.toml:7:11: outputs.spacing: parts 6 apart stay joined by less than a cutter of 6; give at least "
        "6.5, the cutter and 0.5, or a thinner outputs.cutter");
  CHECK(refusal("cutter = 8\nspacing = 8.4") ==
        "job.toml:8:11: outputs.spacing: parts 8.4 apart stay joined by less than a cutter of 8; give at "
        "least 8.5, the cutter and 0.5, or a thinner outputs.cutter");
}

TEST_CASE("a distance of the cutter and half a millimetre or more is kept as given") {
  CHECK(outputs("spacing = 6.5").spacing == 6.5);
  CHECK(outputs("spacing = 8").spacing == 8);
  CHECK(outputs("spacing = 4\ncutter = 3").spacing == 4);
  CHECK(outputs("spacing = \"0.5 in\"").spacing == within(12.7, 1e-12));
}

TEST_CASE("without a distance it is the cutter and 2") {
  CHECK(outputs("cutter = 6").spacing == 8);
  CHECK(outputs("cutter = 8").spacing == 10);
  CHECK(outputs("cutter = 3.2").spacing == within(5.2, 1e-12));
}

TEST_CASE("a sheet is read as length x width, in mm or with units") {
  CHECK(outputs("sheet = \"2500x1250\"").sheet == Vec2(2500, 1250));
  CHECK(outputs("sheet = \"2500 X 1250\"").sheet == Vec2(2500, 1250));
  CHECK(outputs("sheet = \"1250x2500\"").sheet == Vec2(1250, 2500));
  const auto inches = outputs("sheet = \"96 in x 48 in\"").sheet;
  REQUIRE(inches);
  CHECK(same(*inches, {2438.4, 1219.2}, 1e-9));
  CHECK(outputs("sheet = \"100x10000\"").sheet == Vec2(100, 10000));
}

TEST_CASE("a sheet without two sides, or out of range, is refused with what to write") {
  std::size_t wrong = 0;
  for (const std::string text : {"2440", "large", "2440x", "x1220", "2440x1220x18", "99x1220", "2440x10001",
                                 "-2440x1220", "2440 by 1220"}) {
    CHECK(refusal("sheet = \"" + text + "\"") == "job.toml:7:9: outputs.sheet: read \"" + text +
                                                     "\"; write length x width, each 100 to 10000 mm, as "
                                                     "\"2440x1220\"");
    ++wrong;
  }
  CHECK(wrong == 9);
  CHECK(!sheet_size("2440"));
  CHECK(sheet_size("2440x1220") == Vec2(2440, 1220));
}

TEST_CASE("lengths of timber are those of the job, in its units") {
  CHECK(outputs("lengths = [3000]").lengths == std::vector<double>{3000});
  CHECK(outputs("lengths = [4200, \"3 m\"]").lengths == std::vector<double>{4200, 3000});
}

TEST_CASE("lengths that are none or out of range are refused") {
  CHECK(refusal("lengths = []") ==
        "job.toml:7:11: outputs.lengths: names no length; give one or several, as [3000, 4200]");
  CHECK(refusal("lengths = [3000, 150]") ==
        "job.toml:7:18: outputs.lengths[1]: read 150; allowed 200 to 20000 mm");
}

TEST_CASE("labels, aids and nested sheets can be left out") {
  CHECK(outputs("").sheets);
  CHECK(!outputs("sheets = false").sheets);
  CHECK(!outputs("labels = false").labels);
  CHECK(outputs("labels = false").aids);
  CHECK(!outputs("aids = false").aids);
  CHECK(holds(refusal("labels = 1"), "outputs.labels"));
}

TEST_CASE("exporters named alone are kept in their order, whatever they are called") {
  CHECK(outputs("only = [\"csv\", \"dxf\"]").only == std::vector<std::string>{"csv", "dxf"});
  CHECK(refusal("only = []") ==
        "job.toml:7:8: outputs.only: names nothing; leave it out to have everything written");
  CHECK(holds(refusal("only = [1]"), "outputs.only[0]"));
}

TEST_CASE("grain kept, margin and kerf are read, and refused out of range") {
  const OutputSpec out = outputs("grain = \"kept\"\nmargin = 0\nkerf = 3.2");
  CHECK(out.grain);
  CHECK(out.margin == 0);
  CHECK(out.kerf == 3.2);
  CHECK(holds(refusal("margin = 301"), "outputs.margin: read 301; allowed 0 to 300 mm"));
  CHECK(holds(refusal("kerf = 21"), "outputs.kerf: read 21; allowed 0 to 20 mm"));
  CHECK(holds(refusal("cutter = 0.5"), "outputs.cutter: read 0.5; allowed 1 to 30 mm"));
  CHECK(holds(refusal("grain = \"across\""), "outputs.grain"));
}
