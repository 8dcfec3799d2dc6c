// Paths as DXF polylines.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::dxf {

// bulge: tangent of a quarter of the angle swept to the next vertex, anticlockwise positive, 0 = straight.
struct Vertex {
  Vec2 at{0, 0};
  double bulge = 0;
};

// Segments without length are left out; an arc beyond 300 degrees becomes two, since its bulge would hang on
// the last digits of its short chord. An open path ends with a vertex of bulge 0. Empty when nothing is left.
std::vector<Vertex> vertices(const drawing::Path& path);

// Shorter than what a coordinate shows: not drawn.
bool without_length(const Segment& segment);

}  // namespace lamwright::dxf
