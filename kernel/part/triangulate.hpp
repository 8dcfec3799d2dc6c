// A plane polygon with holes as triangles.
#pragma once
#include <array>
#include <cstdint>
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright {

using Triangle = std::array<std::uint32_t, 3>;  // indices of points, anticlockwise

// Triangles between the points of all loops, which are numbered loop after loop. The inside lies to the left
// of every loop: the outer loop runs anticlockwise, holes clockwise. Every point is used and every edge of a
// loop is the edge of one triangle; points in line, up to rounding, are allowed and make no flat triangles
// but once in a thousand times. Loops must neither cross nor touch. Same input, same triangles in the same
// order; time n log n. Throws Error (internal) when a loop has fewer than three points or the sweep runs into
// a crossing; not every crossing is found. Source: Garey, Johnson, Preparata, Tarjan, "Triangulating a simple
// polygon", Information Processing Letters 7 (1978), with both of its passes in one sweep.
std::vector<Triangle> triangulate(const std::vector<std::vector<Vec2>>& loops);

}  // namespace lamwright
