// A program with all exporters of lamwright linked in.
#include <memory>

#include "checks.hpp"
#include "exporters/csv/csv_exporter.hpp"
#include "exporters/dxf/dxf_exporter.hpp"
#include "exporters/gltf/gltf_exporter.hpp"
#include "exporters/html/html_exporter.hpp"
#include "exporters/json/summary.hpp"
#include "exporters/pdf/pdf_exporter.hpp"
#include "exporters/step/step_exporter.hpp"
#include "exporters/svg/svg_exporter.hpp"
#include "kernel/plugin/registry.hpp"
#include "kernel/solid/measure.hpp"
#include "memory.hpp"

namespace {

using namespace lamwright;
using namespace consumer;

const std::string kJob = R"(schema = 1
[panel]
width = 150
profile = [ {bend = 90, radius = 200} ]
[layup]
plies = [ {timber = "birch-yellow", thickness = 1.5, count = 6} ]
)";

Registry registry() {
  Registry out;
  add_press_methods(out);
  out.add(std::make_unique<SvgExporter>());
  out.add(std::make_unique<DxfExporter>());
  out.add(std::make_unique<CsvExporter>());
  out.add(std::make_unique<GltfExporter>());
  out.add(std::make_unique<HtmlExporter>());
  out.add(std::make_unique<StepExporter>());
  out.add(std::make_unique<PdfExporter>());
  out.add(std::make_unique<SummaryExporter>());
  return out;
}

bool begins(const MemorySink& sink, const std::string& file, const std::string& wanted) {
  return sink.files().count(file) && sink.files().at(file).rfind(wanted, 0) == 0;
}

}  // namespace

int main() {
  Checks checks;
  const Registry known = registry();
  const Evaluation result = evaluated(kJob, known);
  checks.equal("errors", result.errors.empty() ? "none" : result.errors.front().what(), "none");
  if (!result.plan) return checks.told();
  MemorySink all;
  Progress progress;
  for (const auto& exporter : known.exporters())
    exporter->write({*result.job, *result.plan, result.findings, progress, result.figures}, all);
  checks.holds("drawing", begins(all, "drawings/press.svg", "<?xml"));
  checks.holds("router file", begins(all, "parts/former-lower.dxf", "  0\nSECTION"));
  checks.holds("model", begins(all, "press.glb", "glTF"));
  checks.holds("solids", begins(all, "press.step", "ISO-10303-21;"));
  checks.holds("print", begins(all, "drawings.pdf", "%PDF-"));
  checks.holds("figures", begins(all, "summary.json", "{\n  \"schema\": 1"));
  // The script of the page alone has more than half a megabyte; it is data inside the library.
  checks.holds("page with its script",
               all.files().at("job-sheet.html").size() > 500000 &&
                   all.files().at("job-sheet.html").find("GLTFLoader") != std::string::npos);
  const Part& part = result.plan->parts.front();
  const double off = solid_volume(build_solid(part)) / part.volume() - 1;
  checks.holds("solid of a part", off > -1e-9 && off < 1e-9);
  return checks.told();
}
