// Findings about how the upper half of a two-part press seats on the pack.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Least over mean pressure that a glue line puts up with. Common practice, no source.
inline constexpr double kEven = 0.6;

// In balance and kept there, all over, evenly, without side thrust, and how the pull does beside the best
// one. `plan` has a pull and is seated.
std::vector<Finding> seating_findings(const PressPlan& plan);

}  // namespace lamwright
