#include "kernel/check/check.hpp"

#include "kernel/check/beams.hpp"
#include "kernel/check/geometry.hpp"
#include "kernel/check/pull.hpp"

namespace lamwright {

std::vector<Finding> findings(const Job& job, const PressPlan& plan) {
  std::vector<Finding> out = geometry_findings(job, plan);
  for (const auto& more : {beam_findings(job, plan), pull_findings(plan)})
    out.insert(out.end(), more.begin(), more.end());
  return out;
}

}  // namespace lamwright
