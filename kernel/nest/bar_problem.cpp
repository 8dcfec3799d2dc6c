#include "kernel/nest/bar_problem.hpp"

#include <algorithm>

namespace lamwright {

double BarPrices::least(const BarState& state) const {
  const double worth = std::inner_product(item.begin(), item.end(), state.demand.begin(), 0.0);
  return worth - std::inner_product(bar.begin(), bar.end(), state.bars.begin(), 0.0);
}

BarState start_of(const BarProblem& problem) {
  BarState state;
  for (const BarItem& item : problem.items) state.demand.push_back(item.count);
  for (const BarKind& kind : problem.kinds) state.bars.push_back(kind.count);
  return state;
}

BarState after(BarState state, const BarPattern& pattern) {
  for (const Taken& t : pattern.take) state.demand[t.item] -= t.count;
  if (pattern.kind != BarPattern::kLeftOut) --state.bars[pattern.kind];
  return state;
}

bool nothing_left(const BarState& state) {
  return std::all_of(state.demand.begin(), state.demand.end(), [](int count) { return count == 0; });
}

Whole load(const BarProblem& problem, const BarPattern& pattern) {
  Whole sum = 0;
  for (const Taken& t : pattern.take) sum += problem.items[t.item].size * t.count;
  return sum;
}

Whole cost(const BarProblem& problem, const BarPattern& pattern) {
  if (pattern.kind != BarPattern::kLeftOut) return problem.kinds[pattern.kind].cost;
  Whole sum = 0;
  for (const Taken& t : pattern.take) sum += problem.items[t.item].left_out * t.count;
  return sum;
}

Whole cost(const BarProblem& problem, const std::vector<BarPattern>& patterns) {
  Whole sum = 0;
  for (const BarPattern& pattern : patterns) sum += cost(problem, pattern);
  return sum;
}

}  // namespace lamwright
