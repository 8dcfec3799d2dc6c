// The linear relaxation of cutting stock, by columns that are made as they are needed.
#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "kernel/nest/bar_problem.hpp"

namespace lamwright {

// Stock of one kind: what one costs and how many there are.
struct CoveringKind {
  double cost = 0;
  std::optional<int> count;
};

struct CoveringSpec {
  std::vector<int> demand;
  std::vector<double> left_out;  // cost of leaving one out, for each item; large where it must not be
  std::vector<CoveringKind> kinds;
  int most_rounds = 0;
};

// The pattern of one kind that is worth most at the items' prices.
struct WorthMost {
  std::vector<Taken> take;
  double value = 0;  // nothing is worth more
};

// One for each kind, in their order; nothing when it cannot tell.
using Pricing = std::function<std::optional<std::vector<WorthMost>>(const std::vector<double>& prices)>;

struct UsedPattern {
  BarPattern pattern;
  double times = 0;
};

struct CoveringResult {
  BarPrices prices;               // bar prices are 0 for kinds without a count
  double bound = 0;               // no cover costs less; 0 when nothing could be told
  std::vector<UsedPattern> used;  // of the last relaxed cover, without what is left out
};

CoveringResult relaxed_cover(const CoveringSpec& spec, const Pricing& pricing);

}  // namespace lamwright
