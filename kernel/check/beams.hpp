// Findings about the beams of presses of two halves.
#pragma once
#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Crown and bending of a crowned flat press; what a leaning beam's straps push along it. Nothing for others.
std::vector<Finding> beam_findings(const Job& job, const PressPlan& plan);

}  // namespace lamwright
