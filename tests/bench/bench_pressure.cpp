// The pressure map and the whole check at growing numbers of stations, beside the plain way: slats solved
// anew for every girth station.
#include "kernel/check/pressure.hpp"
#include "kernel/plugin/evaluate.hpp"
#include "kernel/plugin/memory.hpp"
#include "kernel/press/slat_bed.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"

namespace lamwright::bench {
namespace {

// Ten slats for every former, five in each caul.
std::string job_of(int formers) {
  return "[panel]\nwidth = " + std::to_string(120 * formers) +
         "\nprofile = [{bend = 60, radius = " + std::to_string(formers * 50 * 5) +
         "}]\n[layup]\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count " +
         "= 8}]\n[formers]\nspacing = {count = " + std::to_string(formers) + "}\n";
}

std::size_t slats(const PressPlan& plan) {
  std::size_t count = 0;
  for (const Layer& layer : plan.layers) count += layer.slats.size();
  return count;
}

SpreadingSpec as_pressed(const Evaluation& result) {
  SpreadingSpec spec = slat_bed(*result.job, *result.panel, Moulds::lower);
  for (const Section& section : result.plan->sections) {
    spec.supports.push_back(section.z);
    spec.loads.push_back({section.z, result.job->straps.width, 1});
  }
  return spec;
}

std::vector<std::string> row_of(int formers) {
  Registry registry;
  add_press_methods(registry);
  Progress progress;
  const std::string text = job_of(formers);
  const auto evaluated = [&] { return evaluate(text, "job.toml", MemorySources(), registry, progress); };
  const Evaluation result = evaluated();
  ensure(result.figures.pressure.has_value(), "the job of the bench is pressed");
  const std::size_t stations = result.figures.pressure->girth.size();
  const SpreadingSpec spec = as_pressed(result);
  const double map = fastest(5, [&] { pressure_map(*result.job, *result.plan); });
  const double anew = fastest(2, [&] {
    for (std::size_t i = 0; i < stations; ++i) spread(spec);
  });
  const double check = fastest(5, [&] { evaluated(); });
  return {std::to_string(formers),  std::to_string(slats(*result.plan)),
          std::to_string(stations), number(map, 2),
          number(anew, 1),          number(anew / map, 0),
          number(check, 1)};
}

}  // namespace

void bench_pressure() {
  std::vector<std::vector<std::string>> rows{{"formers", "slats", "girth stations", "map ms",
                                              "slats at each station ms", "each / map", "whole check ms"}};
  for (const int formers : {5, 10, 20, 40, 80}) rows.push_back(row_of(formers));
  print_table("Pressure over girth and width", rows);
}

}  // namespace lamwright::bench
