// What of a drawing lies inside a rectangle.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// The pieces of a line or arc inside the box, in its direction; those along the box's edge are inside. Arcs
// stay arcs. Pieces shorter than kSamePoint are dropped.
std::vector<Segment> clipped(const Segment& segment, const Box2& box);

// The same of a path: closed only when all of it is inside. Without its fill.
std::vector<Path> clipped(const Path& path, const Box2& box);

}  // namespace lamwright::drawing
