// INSERT: a block placed, once or as an array.
#pragma once
#include "kernel/profile/drawn/affine.hpp"
#include "kernel/reading/dxf/record.hpp"

namespace lamwright::dxf_reading {

// columns and rows are at least 1. step_x and step_y lead from one column or row to the next.
struct Insert {
  std::string block;
  Affine place;  // of the first one, without the block's base point
  int columns = 1, rows = 1;
  Vec2 step_x{0, 0}, step_y{0, 0};

  Affine at(int column, int row) const { return moved(column * step_x + row * step_y) * place; }
};

// Throws Error (job) for a scale of 0 and an extrusion off the vertical.
Insert insert(const Record& entity);

}  // namespace lamwright::dxf_reading
