// Free curves that are straight lines.
#pragma once
#include <optional>
#include <vector>

#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright::svg_reading {

// The points at which a curve whose poles lie on a line turns back, in order, and its last point: lines from
// the first pole through these cover the same ground. Nothing when a pole lies more than 1e-6 mm off the
// line. Degree 2 or 3; a rational curve that turns back is left as it is.
std::optional<std::vector<Vec2>> straight_stops(const Bezier& curve);

}  // namespace lamwright::svg_reading
