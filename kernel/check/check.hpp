// All findings about a press plan.
#pragma once
#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

std::vector<Finding> findings(const Job& job, const PressPlan& plan);

}  // namespace lamwright
