// How well the slatted cauls pass the pull on: along the width, over their gaps, round the bends.
#pragma once
#include <optional>
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/pressure.hpp"

namespace lamwright {

std::vector<Finding> slat_findings(const Job& job, const PressPlan& plan,
                                   const std::optional<PressureMap>& map);

// Least over mean pressure under the gaps of an open caul: the cover sheet and the outermost ply as a loose
// beam on the rest of the pack, loaded by slats `width` wide every `pitch`. 1 without gaps.
double lagging_evenness(const Job& job, const Panel& panel, double pitch, double width);

}  // namespace lamwright
