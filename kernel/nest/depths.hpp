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
  enum class Lies : std::uint8_t { outside, inside, crossed };
  struct Cell {
    Lies lies = Lies::outside;
    std::uint32_t first = 0, last = 0;  // in nearest_
  };
  struct Part;

  void divide(const Part& part, std::int64_t& work);
  Grid sides(Grid off) const;

  const Zone& zone_;
  GridPoint low_;
  Grid side_ = 1;  // of a cell
  double per_side_ = 1;
  std::vector<Cell> cells_;
  std::vector<std::uint32_t> nearest_;  // indices of edges
};

}  // namespace lamwright::nesting
