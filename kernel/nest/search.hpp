// The search for a good layout: orders, rules of placing, groups, then steps from the best one.
#pragma once
#include <functional>

#include "kernel/nest/layout.hpp"

namespace lamwright::nesting {

struct SearchSpec {
  std::vector<Shape> shapes;
  std::vector<int> counts;  // of each shape
  Board board;
  Grid spacing = 0;
  std::int64_t effort = 0;     // edges looked at until the search ends, after the first layout
  std::function<void()> step;  // called between layouts
};

struct SearchResult {
  std::vector<std::vector<Laid>> sheets;
  std::vector<std::size_t> left_over;  // pieces, one entry each
};

// The same spec gives the same result on every machine: effort is counted, not timed.
SearchResult search(const SearchSpec& spec);

}  // namespace lamwright::nesting
