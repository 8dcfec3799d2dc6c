// Findings about gluing as work: time, stages, uses of the formers.
#pragma once
#include <vector>

#include "kernel/check/finding.hpp"
#include "kernel/check/glue_work.hpp"

namespace lamwright {

std::vector<Finding> work_findings(const Job& job, const PressPlan& plan, const GlueWork& work);

}  // namespace lamwright
