// Drawn pieces moved, turned, mirrored and scaled.
#pragma once
#include <vector>

#include "kernel/profile/drawn/affine.hpp"
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright::dxf_reading {

// Circular arcs stay what they are under even scaling, turning and mirroring, and else become elliptic ones
// without loss. Ends that were shared stay so to the last bit.
std::vector<DrawnPiece> placed(const std::vector<DrawnPiece>& pieces, const Affine& map);

}  // namespace lamwright::dxf_reading
