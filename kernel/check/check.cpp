#include "kernel/check/check.hpp"

#include "kernel/check/beams.hpp"
#include "kernel/check/bends.hpp"
#include "kernel/check/closing.hpp"
#include "kernel/check/fixings.hpp"
#include "kernel/check/geometry.hpp"
#include "kernel/check/glue_line.hpp"
#include "kernel/check/pull.hpp"
#include "kernel/check/slats.hpp"
#include "kernel/check/structure.hpp"
#include "kernel/check/work.hpp"

namespace lamwright {

Assessment assess(const Job& job, const PressPlan& plan) {
  Assessment out;
  const auto& pressure = out.figures.pressure = pressure_map(job, plan);
  const Masses& mass = out.figures.masses.emplace(masses(job, plan));
  const GlueWork& work = out.figures.glue.emplace(glue_work(job, plan));
  const auto add = [&](const std::vector<Finding>& more) {
    out.findings.insert(out.findings.end(), more.begin(), more.end());
  };
  add(bend_findings(job, plan));
  add(closing_findings(job, plan));
  add(glue_line_findings(job, plan, pressure));
  add(geometry_findings(job, plan));
  add(slat_findings(job, plan, pressure));
  add(structure_findings(job, plan, pressure));
  add(fixing_findings(job, plan, mass));
  add(beam_findings(job, plan));
  add(pull_findings(plan));
  add(work_findings(job, plan, work));
  return out;
}

}  // namespace lamwright
