// Checks of a plan's geometry against the rules of the press.
#pragma once
#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// In a fixed order; every rule reports, also when it passes.
std::vector<Finding> geometry_findings(const Job& job, const PressPlan& plan);

}  // namespace lamwright
