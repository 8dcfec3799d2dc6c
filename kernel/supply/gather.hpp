// From a plan to what is bought and cut for it.
#pragma once
#include <functional>

#include "kernel/check/figures.hpp"
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright {

// Nests, cuts and counts. `step` is called between rounds of the search and may throw to stop it.
Supply gather(const Job& job, const PressPlan& plan, const Figures& figures,
              const std::function<void()>& step = {});

}  // namespace lamwright
