// Two pieces that lie well together.
#pragma once
#include "kernel/nest/group.hpp"

namespace lamwright::nesting {

// The second beside the first, same way or turned by half. Best first by each of three measures: area of the
// box, and area that each pair takes in an endless row along x and along y; at most `most` by each, no
// arrangement twice.
std::vector<Arrangement> pairs(const std::vector<Shape>& shapes, std::size_t first, std::size_t second,
                               std::size_t most, NoFit& no_fit);

}  // namespace lamwright::nesting
