// LWPOLYLINE and POLYLINE.
#pragma once
#include <vector>

#include "kernel/reading/dxf/outline.hpp"
#include "kernel/reading/dxf/record.hpp"

namespace lamwright::dxf_reading {

// bulge: tangent of a quarter of the angle swept to the next corner, anticlockwise positive, 0 = straight.
struct Corner {
  Vec2 at{0, 0};
  double bulge = 0;
};

// Lines and exact arcs from corner to corner, and back to the first when closed.
Outline chain(const std::vector<Corner>& corners, bool closed);

// One arc or line; two equal points make a line without length. |bulge| at most 1e6.
Segment bulged(const Corner& from, const Vec2& to);

Outline light_polyline_outline(const Record& entity);

// A mesh in space, or surfaces: no curve.
bool is_mesh(const Record& polyline);
// Reads the vertices that follow a POLYLINE, and its end. Of a smoothed polyline those of the smooth line
// are taken, not those of its frame.
Outline polyline_outline(const Record& polyline, Records& following);

}  // namespace lamwright::dxf_reading
