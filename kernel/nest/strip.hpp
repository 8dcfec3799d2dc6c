// Pieces on an endless strip, packed to its left end: how published sets measure a nest.
#pragma once
#include <cstdint>

#include "kernel/nest/true_shape.hpp"

namespace lamwright {

struct StripPlan {
  double length = 0;             // from the strip's left end to the right end of the pieces
  std::vector<NestedAt> placed;  // left to right; sheet 0
};

// Strip from (0, 0) upward to `height`, without margins and spacing: pieces may touch. `effort` is the number
// of polygon edges that the search looks at, some 2e8 in a second. Every piece must fit: throws Error
// (geometry).
StripPlan pack_strip(const std::vector<NestPiece>& pieces, double height, std::int64_t effort);

}  // namespace lamwright
