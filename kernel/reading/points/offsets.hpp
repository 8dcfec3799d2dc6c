// Points from offsets measured square to a straight edge.
#pragma once
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright {

// Offsets at equal stations along a straight edge, the first at its beginning.
struct OffsetsSpec {
  std::vector<double> offsets;  // mm, at least three, finite
  double every = 0;             // mm between stations, above 0
};

// Station i lies at X = i * every, its offset is Y. Throws Error (geometry), which names the offset by its
// number from 1.
std::vector<Vec2> points_from(const OffsetsSpec& spec);

}  // namespace lamwright
