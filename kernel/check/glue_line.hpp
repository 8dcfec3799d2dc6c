// What pressure the glue line gets against what the glue wants, and what would reach it.
#pragma once
#include <optional>
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

// Pressure on the finished panel against the glue's range. `map` is nothing where the plan knows of nothing
// that presses.
std::vector<Finding> glue_line_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map);

}  // namespace lamwright
