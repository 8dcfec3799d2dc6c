// Points of a line that make a difference on paper: others only make the file long.
#pragma once
#include <vector>

#include "kernel/profile/vector.hpp"

namespace lamwright::drawing {

inline constexpr double kSeen = 0.005;  // mm on paper

// Without those nearer than kSeen to the one before, or to the line between their neighbours.
std::vector<Vec2> seen_points(const std::vector<Vec2>& points);
// The same of a closed line, whose last point leads on to the first.
std::vector<Vec2> seen_loop(const std::vector<Vec2>& points);

}  // namespace lamwright::drawing
