// All findings about a press plan, with the figures they stand on.
#pragma once
#include "kernel/check/figures.hpp"
#include "kernel/check/finding.hpp"

namespace lamwright {

// What the checks say and what they worked out on the way.
struct Assessment {
  std::vector<Finding> findings;  // in the order of the checks
  Figures figures;                // that drawings and the summary show as well
};
// Of a plan that was laid out for this job. Work is bounded; the same input gives the same answer.
Assessment assess(const Job& job, const PressPlan& plan);

}  // namespace lamwright
