// Beams, bearers and blocks from lengths of timber.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright {

// One cutting plan for each section, in the order in which the plan's parts name them. A piece longer than
// any length that is bought is told in `notes`.
std::vector<TimberCut> timber(const Job& job, const PressPlan& plan, std::vector<std::string>& notes);

// The length that a piece of timber is cut to: its measure along the fibres.
double cut_length(const Job& job, const Part& part);

}  // namespace lamwright
