// Checks of how a two-part press is pulled shut and how its upper half seats.
#pragma once
#include "kernel/check/finding.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Nothing for a plan without a pull axis. One finding a run for its angle to the axis, then the seating.
std::vector<Finding> pull_findings(const PressPlan& plan);

}  // namespace lamwright
