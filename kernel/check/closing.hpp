// Whether the pack lies down everywhere, and what the glue line gets.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

// Straps over the pack: hollows that they bridge, strips at the ends that stay open.
std::vector<Finding> closing_findings(const Job& job, const PressPlan& plan);

// Pressure on the finished panel against the glue's range. `map` is nothing where the plan knows of nothing
// that presses.
std::vector<Finding> glue_line_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map);

}  // namespace lamwright
