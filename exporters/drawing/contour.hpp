// Where a surface over a grid lies above a level.
#pragma once
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright::drawing {

// Heights at the crossings of lines x and y, straight between neighbours. Both ascending; the same x may
// stand twice, where the surface jumps.
struct Grid {
  std::vector<double> x;
  std::vector<double> y;
  std::vector<std::vector<double>> value;  // [x][y]
};

// Closed loops round what lies above the level, which is on their left: outlines run anticlockwise, holes
// clockwise. None crosses another. At the grid's edge they follow it.
std::vector<std::vector<Vec2>> loops_above(const Grid& grid, double level);

}  // namespace lamwright::drawing
