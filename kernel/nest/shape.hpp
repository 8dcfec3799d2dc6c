// Outlines as polygons on the grid, never smaller than the outline itself.
#pragma once
#include <array>

#include "kernel/nest/grid.hpp"
#include "kernel/nest/true_shape.hpp"

namespace lamwright::nesting {

// One piece as the search sees it. Every turn's polygon is that of turn 0 turned exactly and shifted so that
// the low corner of the true box lies at (0, 0), or less than half a unit from it.
struct Shape {
  GridLoop polygon;                // turn 0, anticlockwise
  std::array<GridPoint, 4> low{};  // of the box of the polygon turned about (0, 0)
  std::array<Vec2, 4> size;        // true box, in units of the grid
  std::array<bool, 4> allowed{};
  std::array<bool, 4> distinct{};  // allowed, and not the same as an earlier one
  Grid slack = 0;                  // the outline may stand out of its polygon by this
  double area = 0;                 // true, in square units of the grid

  GridLoop lying(int quarters) const;
};

// `per_mm` units of the grid in 1 mm. Arcs are replaced by tangents (crowns) and chords (hollows) that stand
// off by at most `arc_excess` mm.
Shape shape(const Outline& outline, Turns turns, double per_mm, double arc_excess);

}  // namespace lamwright::nesting
