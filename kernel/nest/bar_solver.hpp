// The cheapest cutting of a bar problem.
#pragma once
#include <optional>
#include <vector>

#include "kernel/nest/bar_costs.hpp"
#include "kernel/nest/bar_problem.hpp"

namespace lamwright {

struct BarCutting {
  std::vector<BarPattern> bars;
  Whole bound = 0;  // no cutting costs less; the cost of `bars` where that is proved to be the least
};

struct BarTask {
  BarProblem problem;
  CostSteps costs;
  std::vector<BarPattern> known;  // a cutting to start from; may be empty
  std::optional<Whole> kerf;  // given: of the cheapest cuttings the one with the longest rest in a single bar
};

// Nothing when no cutting was found: the counted bars do not suffice, or it is hard to tell that they do.
std::optional<BarCutting> cheapest_cutting(const BarTask& task);

}  // namespace lamwright
