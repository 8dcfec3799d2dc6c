// How deep places lie inside a no-fit zone, looked up.
#pragma once
#include "kernel/nest/no_fit.hpp"

namespace lamwright::nesting {

// How far a place lies inside a zone: the least way out; 0 outside and on the edge.
double depth(const Zone& zone, GridPoint p);

// A zone's box in equal cells, each with the edges that may be the nearest to a place in it: the same depths
// as from all edges, for a small part of the work.
class Depths {
 public:
  // The zone must outlive the table. `work` counts edges looked at.
  Depths(const Zone& zone, std::int64_t& work);

  double at(GridPoint p, std::int64_t& work) const;

 private:
  enum class Cell : std::uint8_t { outside, inside, crossed };
  struct Part;

  void divide(const Part& part, std::int64_t& work);

  const Zone& zone_;
  GridPoint low_;
  Grid side_ = 1;  // of a cell
  std::vector<Cell> cells_;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> lists_;  // of each cell: first and last in nearest_
  std::vector<std::uint32_t> nearest_;                          // indices of edges
};

}  // namespace lamwright::nesting
