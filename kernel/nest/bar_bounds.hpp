// Prices of items that bound the cost of a cutting from below, and first cuttings made by them.
#pragma once
#include <optional>
#include <vector>

#include "kernel/nest/bar_problem.hpp"
#include "kernel/nest/covering.hpp"

namespace lamwright {

// Items priced by their length: sum of (length + kerf) / (stock + kerf) at the kind that gives most for its
// cost.
BarPrices prices_by_length(const BarProblem& problem);

CoveringResult relaxed_cover(const BarProblem& problem);

// Bars filled one after the other around the longest piece, with what is worth most at the prices. Pieces
// without room are left out; nothing when they must not be.
std::optional<std::vector<BarPattern>> filled_in_turn(const BarProblem& problem, const BarPrices& prices,
                                                      BarState state);

}  // namespace lamwright
