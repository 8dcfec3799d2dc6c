#include "exporters/dxf/dxf_exporter.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "tests/exporters/dxf/dxf_pairs.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;

namespace {

struct Notes : Progress {
  std::vector<std::string> notes;
  void note(std::string_view sentence) override { notes.emplace_back(sentence); }
};

MemorySink exported(const PressPlan& plan, const Job& job, Progress& progress, const Supply& supply = {}) {
  MemorySink sink;
  const std::vector<Finding> none;
  DxfExporter().write({job, plan, none, progress, kNoFigures, supply}, sink);
  return sink;
}

MemorySink exported(const PressPlan& plan, const Job& job) {
  Progress quiet;
  return exported(plan, job, quiet);
}

Job job_for(const std::string& version) {
  Job job = sample::job();
  job.outputs.dxf = version;
  return job;
}

std::set<std::string> layers(const std::string& text) {
  std::set<std::string> out;
  for (const auto& layer : test::of_type(test::dxf_records(text), "LAYER")) out.insert(layer.first(2));
  return out;
}

}  // namespace

TEST_CASE("boards and nothing else get a DXF file") {
  CHECK(exported(sample::plan(), job_for("r2000")).written() ==
        std::vector<std::string>{"parts/former-lower.dxf"});
}

TEST_CASE("shop aids get a DXF file as parts do") {
  PressPlan plan = sample::plan();
  plan.aids.push_back({ShopAid::Use::check_inner, sample::former().renamed("template-inner")});
  CHECK(exported(plan, job_for("r2000")).files().count("parts/template-inner.dxf") == 1);
}

TEST_CASE("the job's outputs name the version of DXF files") {
  const auto text = [](const std::string& version) {
    return exported(sample::plan(), job_for(version)).files().at("parts/former-lower.dxf");
  };
  CHECK(text("r2000").find("AC1015") != std::string::npos);
  CHECK(text("r12").find("AC1009") != std::string::npos);
}

TEST_CASE("a former has an operation to a layer and its letters are strokes") {
  const std::string text = exported(sample::plan(), job_for("r2000")).files().at("parts/former-lower.dxf");
  CHECK(layers(text) == std::set<std::string>{"0", "DRILL_35", "DRILL_8_DEEP_12", "CBORE_16_DEEP_4",
                                              "OUTLINE", "MARK", "LABEL", "CHECK_100"});
  const auto records = test::dxf_records(text);
  CHECK(test::of_type(records, "TEXT").empty());
  CHECK(test::of_type(records, "CIRCLE").size() == 4);
  std::size_t outlines = 0, letters = 0;
  for (const auto& line : test::of_type(records, "LWPOLYLINE")) {
    outlines += line.first(8) == "OUTLINE";
    letters += line.first(8) == "LABEL";
  }
  CHECK(outlines == 1);
  CHECK(letters >= std::string("station__of4").size());
}

TEST_CASE("labels can be left out of cutting files") {
  Job job = job_for("r2000");
  job.outputs.labels = false;
  CHECK(layers(exported(sample::plan(), job).files().at("parts/former-lower.dxf")).count("LABEL") == 0);
}

TEST_CASE("a letter that there is no stroke for is told once") {
  PressPlan plan = sample::plan();
  const Part marked = sample::former().marked({{Mark::Kind::label, {}, "板 板", {0, 150}, 0, 10}});
  plan.parts = {marked, marked.renamed("former-upper")};
  Notes progress;
  exported(plan, job_for("r2000"), progress);
  CHECK(progress.notes == std::vector<std::string>{"cutting files: no letter for U+677F, drawn as a box"});
}

TEST_CASE("nested sheets are numbered from one") {
  CutSheet sheet{"plywood-18", 18, {1250, 800}, 15, {{sample::former(), "former-lower-01", {0, {400, 100}}}}};
  Supply supply;
  supply.sheets = {sheet, sheet};
  Progress quiet;
  const auto sink = exported(sample::plan(), job_for("r2000"), quiet, supply);
  CHECK(sink.written() == std::vector<std::string>{"parts/former-lower.dxf", "sheets/1.dxf", "sheets/2.dxf"});
  CHECK(layers(sink.files().at("sheets/2.dxf")).count("SHEET_BORDER") == 1);
}

TEST_CASE("the same plan gives the same DXF bytes") {
  const auto one = exported(sample::plan(), job_for("r12")), other = exported(sample::plan(), job_for("r12"));
  CHECK(one.files() == other.files());
}
