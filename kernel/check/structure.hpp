// Whether beams, feet, pins and screws carry what the straps put on them.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/masses.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

std::vector<Finding> structure_findings(const Job& job, const PressPlan& plan,
                                        const std::optional<PressureMap>& map, const Masses& masses);

// By how much the straps may pull harder before a beam breaks or splits or its pin bends; below 1 where one
// does.
double spare_strength(const Job& job, const PressPlan& plan);

}  // namespace lamwright
