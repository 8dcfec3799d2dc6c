// Whole jobs from text to findings: whatever the bytes are, there is a plan with finite figures or a refusal.
#include <cmath>

#include "kernel/plugin/evaluate.hpp"
#include "tests/fuzz/job_checks.hpp"
#include "tests/fuzz/served_files.hpp"
#include "tests/fuzz/target.hpp"

namespace lamwright::fuzz {

// A whole plan with its checks, and wide presses have hundreds of formers and thousands of slats; without
// sanitizers the widest takes some seconds.
int most_seconds() { return 60; }

}  // namespace lamwright::fuzz

namespace {

using namespace lamwright;

void check(const Part& part) {
  ensure(std::isfinite(part.volume()) && part.volume() > 0, "a part has a volume");
  ensure(part.box().size().allFinite(), "a part has a size");
}

void check(const Closure& closure) {
  for (const StrapEnd& end : {closure.left, closure.right}) {
    ensure(end.leaves.allFinite() && end.mark.allFinite(), "a strap has two ends");
    ensure(std::isfinite(end.run) && end.run >= 0, "a strap has a length");
  }
}

void check(const PressPlan& plan) {
  ensure(!plan.sections.empty() && !plan.parts.empty() && !plan.bodies.empty(), "a plan has pieces");
  for (const Part& part : plan.parts) check(part);
  for (const Closure& closure : plan.closures) check(closure);
  for (const Body& body : plan.bodies) {
    ensure(body.part < plan.parts.size(), "a body has a part");
    ensure(body.placed.origin.allFinite(), "a body has a place");
  }
  for (const Section& section : plan.sections)
    ensure(std::isfinite(section.z) && std::isfinite(section.lower.girth()), "a section has a contact edge");
}

// A limit may be unknown, which is not a number.
void check(const Finding& finding) {
  ensure(!finding.id.empty() && !finding.title.empty() && !finding.basis.empty(), "a finding is told");
  ensure(std::isfinite(finding.value), finding.id.c_str());
}

void check(const Figures& figures) {
  if (const auto& map = figures.pressure)
    for (const auto& row : map->value)
      for (const double value : row) ensure(std::isfinite(value) && value >= 0, "pressures are finite");
  if (figures.masses) ensure(std::isfinite(figures.masses->press), "the press has a mass");
  if (figures.glue) ensure(std::isfinite(figures.glue->total_mass), "the glue has a mass");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Registry registry;
  add_press_methods(registry);
  Progress progress;
  const Evaluation result =
      evaluate(fuzz::text_of(data, size), "job.toml", fuzz::ServedFiles(), registry, progress);
  fuzz::check_errors(result.errors);
  if (!result.errors.empty()) return fuzz::kRefused;
  ensure(result.job && result.panel && result.plan, "without errors there is a plan");
  check(*result.plan);
  for (const Finding& finding : result.findings) check(finding);
  check(result.figures);
  return 0;
}
