// A large job at growing scale, stage by stage, beside the plain way to its solids.
#include <sys/resource.h>

#include <memory>
#include <optional>

#include "exporters/csv/csv_exporter.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/dxf/dxf_exporter.hpp"
#include "exporters/gltf/glb.hpp"
#include "exporters/gltf/gltf_exporter.hpp"
#include "exporters/gltf/shared_glb.hpp"
#include "exporters/html/html_exporter.hpp"
#include "exporters/json/summary.hpp"
#include "exporters/pdf/pdf_exporter.hpp"
#include "exporters/step/step_exporter.hpp"
#include "exporters/svg/svg_exporter.hpp"
#include "kernel/job/make_panel.hpp"
#include "kernel/press/aids.hpp"
#include "kernel/press/slatted.hpp"
#include "kernel/solid/solid.hpp"
#include "kernel/supply/gather.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"
#include "tests/bench/desk_job.hpp"
#include "tests/bench/large_job.hpp"
#include "tests/bench/plain_press.hpp"

namespace lamwright::bench {
namespace {

constexpr int kMostPlain = kLargeScale;  // above that the plain way takes minutes

struct Stage {
  std::string name;
  double ms = 0;
};

struct Size {
  std::size_t formers = 0, slats = 0, bores = 0, bodies = 0;  // over the press
  std::size_t features = 0;  // edges and bores of unique parts, runs of slats
};

struct Measured {
  int scale = 0;
  Size size;
  std::vector<Stage> stages;
  double peak = 0;  // MB
  std::optional<double> plain;
};

Size size_of(const PressPlan& plan) {
  Size out;
  out.formers = plan.sections.size();
  out.bodies = plan.bodies.size();
  for (const Part& part : plan.parts) out.features += part.outline().segments().size() + part.bores().size();
  for (const PlannedCaul& caul : plan.cauls) out.features += caul.schedule.runs.size();
  for (const Body& body : plan.bodies) {
    const Part& part = plan.parts[body.part];
    if (part.kind() == PartKind::slat)
      ++out.slats;
    else
      out.bores += part.bores().size();
  }
  return out;
}

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

class Stages {
 public:
  explicit Stages(int times) : times_(times) {}
  void add(const std::string& name, const std::function<void()>& run) {
    out_.push_back({name, fastest(times_, run)});
  }
  std::vector<Stage> all() const { return out_; }

 private:
  int times_;
  std::vector<Stage> out_;
};

// The job is built without laying flat parts on sheets, which is bounded by effort and not by the job's size.
PressPlan planned(Stages& stages, const Registry& registry, const std::string& text,
                  std::optional<Job>& job) {
  stages.add("read", [&] { job = read_job(text, "job.toml", registry.keys(), MemorySources()).job; });
  ensure(job.has_value(), "the job of the bench can be read");
  std::optional<Panel> panel;
  stages.add("panel", [&] { panel = make_panel(*job); });
  std::optional<PressPlan> laid_out;
  stages.add("plan", [&] { laid_out = registry.method("one-part")->plan(*job, *panel); });
  PressPlan plan = *laid_out;
  stages.add("slats", [&] {
    plan = *laid_out;
    add_slats(*job, plan);
  });
  stages.add("aids", [&] { plan.aids = shop_aids(*job, *panel).aids; });
  return plan;
}

std::vector<std::unique_ptr<Exporter>> exporters() {
  std::vector<std::unique_ptr<Exporter>> out;
  out.push_back(std::make_unique<StepExporter>());
  out.push_back(std::make_unique<SvgExporter>());
  out.push_back(std::make_unique<DxfExporter>());
  out.push_back(std::make_unique<CsvExporter>());
  out.push_back(std::make_unique<GltfExporter>());
  out.push_back(std::make_unique<HtmlExporter>());
  out.push_back(std::make_unique<PdfExporter>());
  out.push_back(std::make_unique<SummaryExporter>());
  return out;
}

Measured measured(int scale) {
  Registry registry;
  add_press_methods(registry);
  Progress progress;
  Measured out{scale, {}, {}, 0, std::nullopt};
  Stages stages(3);
  std::optional<Job> job;
  const PressPlan plan = planned(stages, registry, large_job(scale), job);
  Assessment checks;
  stages.add("checks", [&] { checks = assess(*job, plan); });
  job->outputs.sheets = false;
  Supply supply;
  stages.add("lists", [&] { supply = gather(*job, plan, checks.figures); });
  MadeOnce shared;
  const ExportInput input{*job, plan, checks.findings, progress, checks.figures, supply, &shared};
  stages.add("drawings", [&] {
    drawing::sheets({*job, plan, checks.findings, progress, checks.figures, supply});
  });
  stages.add("3D", [&] { glb(scene::scene_of(plan), plan.title); });
  drawing::sheets(input);
  (void)shared_glb(input);
  for (const auto& exporter : exporters())
    stages.add(exporter->name(), [&] {
      CountingSink sink;
      exporter->write(input, sink);
    });
  out.size = size_of(plan);
  out.stages = stages.all();
  out.peak = peak_megabytes();
  if (scale > kMostPlain) return out;
  PlainPress plain;
  out.plain = fastest(1, [&] { plain = plain_press(plan); });
  ensure(same_volumes(plain, plan), "the plain way makes the same solids");
  return out;
}

double sum_of(const Measured& m) {
  double sum = 0;
  for (const Stage& stage : m.stages) sum += stage.ms;
  return sum;
}

// Time for each of what is counted, over that at the scale before.
std::string growth(const Measured& now, const Measured* before, std::size_t Size::*count) {
  if (!before) return "-";
  const auto each = [&](const Measured& m) { return sum_of(m) / static_cast<double>(m.size.*count); };
  return number(each(now) / each(*before), 2);
}

std::vector<std::string> cells(const Measured& m, const Measured* before) {
  std::vector<std::string> row{std::to_string(m.scale),       std::to_string(m.size.formers),
                               std::to_string(m.size.bores),  std::to_string(m.size.slats),
                               std::to_string(m.size.bodies), std::to_string(m.size.features)};
  for (const Stage& stage : m.stages) row.push_back(number(stage.ms, 1));
  row.push_back(number(sum_of(m), 0));
  row.push_back(growth(m, before, &Size::features));
  row.push_back(growth(m, before, &Size::bodies));
  row.push_back(number(m.peak, 0));
  row.push_back(m.plain ? number(*m.plain, 0) : "-");
  return row;
}

}  // namespace

void bench_large() {
  std::vector<Measured> all;
  for (const int scale : {1, 2, 4, 8}) all.push_back(measured(scale));
  std::vector<std::vector<std::string>> rows{{"scale", "formers", "bores", "slats", "bodies", "features"}};
  for (const Stage& stage : all.front().stages) rows.front().push_back(stage.name);
  for (const char* name :
       {"all ms", "growth a feature", "growth a body", "MB peak so far", "plain solids ms"})
    rows.front().push_back(name);
  for (std::size_t i = 0; i < all.size(); ++i) rows.push_back(cells(all[i], i == 0 ? nullptr : &all[i - 1]));
  print_table("A long arch at growing scale, ms by stage; formers and beams made one by one with Booleans",
              rows);
}

}  // namespace lamwright::bench
