// Whether sheets may be bent as tightly as the panel asks.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// One finding for every bend and every kind of ply, cover sheet and sheathing: the inside radius as pressed
// against the sheet's least.
std::vector<Finding> bend_findings(const Job& job, const PressPlan& plan);

}  // namespace lamwright
