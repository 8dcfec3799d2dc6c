// What one entity draws.
#pragma once
#include <vector>

#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright::dxf_reading {

// In the units of the file and the axes of the block or drawing it stands in. Pieces may have no length.
struct Outline {
  std::vector<DrawnPiece> pieces;  // each begins where the one before ends
  bool closed = false;
};

}  // namespace lamwright::dxf_reading
