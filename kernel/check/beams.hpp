// Findings about beams.
#pragma once
#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Crown and bending of a crowned flat press; the screws into the formers' feet; what straps push along a
// leaning beam. Each only where the press has it.
std::vector<Finding> beam_findings(const Job& job, const PressPlan& plan);

}  // namespace lamwright
