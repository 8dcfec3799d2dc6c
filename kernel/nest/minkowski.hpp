// Sums of polygons: {a + b}. The positions at which one polygon meets another are such a sum.
#pragma once
#include "kernel/nest/grid.hpp"

namespace lamwright::nesting {

struct PolygonSum {
  std::vector<GridLoop> loops;  // outer loop anticlockwise, true holes clockwise
  bool exact = true;            // false: corners were rounded to the grid, by less than 2 units
};

// Both anticlockwise and simple. From the convolution of the two loops (Guibas, Ramshaw, Stolfi 1983): its
// winding number at p is the number of pieces in which a meets p - b, so that a non-zero winding is the sum
// and holes are true ones.
PolygonSum sum(const GridLoop& a, const GridLoop& b);

bool convex(const GridLoop& loop);

// A polygon round the disc of this radius, the same after a quarter turn, no wider than the disc along x and
// y: pieces with straight sides keep their distance to the last bit.
GridLoop disc(Grid radius);

// The shape grown by the disc; holes come out no larger than they are, those that the disc fills are gone.
PolygonSum grown(const PolygonSum& shape, Grid radius);

}  // namespace lamwright::nesting
