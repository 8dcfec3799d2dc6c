#include <iostream>

#include "exporters/svg/svg_exporter.hpp"
#include "kernel/plugin/evaluate.hpp"
#include "kernel/plugin/memory.hpp"

using namespace lamwright;
int main() {
  const std::string job(std::istreambuf_iterator<char>(std::cin), {});
  Registry registry;
  add_press_methods(registry);
  Progress silent;
  const Evaluation found = evaluate(job, "job.toml", MemorySources(), registry, silent);
  for (const Error& error : found.errors) std::cerr << error.what() << "\n";
  if (!found.plan) return 1;
  for (const Finding& f : worst_first(found.findings)) std::cout << to_text(f.verdict) << " " << f.id << "\n";
  MemorySink drawings;
  SvgExporter().write({*found.job, *found.plan, found.findings, silent, found.figures}, drawings);
  for (const auto& [name, data] : drawings.files()) std::cout << name << " " << data.size() << "\n";
}
