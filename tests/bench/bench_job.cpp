// A whole job, stage by stage, at growing size: reading and planning, checks, solids and STEP, drawings,
// summary.
#include <sys/resource.h>

#include <map>

#include "exporters/json/summary.hpp"
#include "exporters/step/step_exporter.hpp"
#include "exporters/svg/svg_exporter.hpp"
#include "kernel/solid/solid.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"
#include "tests/bench/desk_job.hpp"

namespace lamwright::bench {
namespace {

std::vector<std::string> row_of(int formers) {
  Registry registry;
  add_press_methods(registry);
  Progress progress;
  const std::string text = desk_job(formers);
  const auto evaluated = [&] { return evaluate(text, "job.toml", MemorySources(), registry, progress); };
  const Evaluation result = evaluated();
  ensure(result.plan.has_value(), "the job of the bench can be pressed");
  const ExportInput input{*result.job, *result.plan, result.findings, progress, result.figures};
  const auto time_of = [&](const Exporter& exporter) {
    return fastest(3, [&] {
      CountingSink sink;
      exporter.write(input, sink);
    });
  };
  CountingSink all;
  StepExporter().write(input, all);
  SvgExporter().write(input, all);
  const double plan = fastest(5, [&] { evaluated(); });
  const double solids = fastest(3, [&] {
    for (const Part& part : result.plan->parts) build_solid(part);
  });
  const double step = time_of(StepExporter()), svg = time_of(SvgExporter()),
               summary = time_of(SummaryExporter());
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return {std::to_string(formers),
          std::to_string(result.plan->bodies.size()),
          number(plan, 2),
          number(solids, 2),
          number(step, 1),
          number(svg, 2),
          number(summary, 2),
          number(plan + step + svg + summary, 1),
          number(double(all.size()) / 1e6, 2),
          number(usage.ru_maxrss / 1024.0, 0)};
}

}  // namespace

void bench_job() {
  std::vector<std::vector<std::string>> rows{{"formers", "bodies", "plan ms", "solids ms",
                                              "STEP ms (solids too)", "SVG ms", "summary ms", "all ms",
                                              "MB written", "MB peak so far"}};
  for (const int formers : {4, 8, 16, 32, 64}) rows.push_back(row_of(formers));
  print_table("The reading desk with growing numbers of formers, stage by stage", rows);
}

}  // namespace lamwright::bench
