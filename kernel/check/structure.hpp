// Whether beams, feet and pins carry what the straps put on them.
#pragma once
#include <optional>
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

std::vector<Finding> structure_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map);

// By how much the straps may pull harder before a beam breaks or splits or its pin bends; below 1 where one
// does.
double spare_strength(const Job& job, const PressPlan& plan);

// What hands with a longer lever get into a strap within its rating, N.
double hand_tension(const Job& job);
// The same, as long as beams and pins stand it. The plan has straps.
double most_tension(const Job& job, const PressPlan& plan);

}  // namespace lamwright
