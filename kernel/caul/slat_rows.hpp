// How far the slats in stock reach round a curve.
#pragma once
#include "kernel/caul/run_kinds.hpp"

namespace lamwright {

struct Coverage {
  double close = 0, open = 0;  // mm of girth; see schedule.hpp
};

// No more than 400 rows of a width are counted.
Coverage stock_coverage(const ScheduleSpec& spec, const RunKinds& kinds, const SolvedRuns& solved,
                        double gap);

}  // namespace lamwright
