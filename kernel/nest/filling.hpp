// The bounded knapsack problem: what is worth most in one bar.
#pragma once
#include <vector>

#include "kernel/nest/bar_problem.hpp"

namespace lamwright {

struct FillingSpec {
  std::vector<Whole> sizes;    // above 0
  std::vector<double> values;  // 0 or more
  std::vector<int> most;       // of each item
  Whole room = 0;
  long steps = 0;  // after so many the best found is given
};

struct Filling {
  std::vector<Taken> take;  // by item
  double value = 0;
  bool exact = true;  // nothing is worth more (but for rounding)
};

Filling best_filling(const FillingSpec& spec);

}  // namespace lamwright
