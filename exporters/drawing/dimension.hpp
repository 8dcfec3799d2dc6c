// Dimensions (ISO 129-1): helpers that add lines, arrows and text to a drawing. All points are on paper, mm.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

// Filled, 3 long; `toward` is the unit direction in which it points.
void arrow(Drawing& drawing, const Vec2& tip, const Vec2& toward);

struct Linear {
  Vec2 from{0, 0};
  Vec2 to{0, 0};
  std::string text;
  double share = 0.5;           // where along its line the text should stand; moved where that is not free
  bool extension_lines = true;  // off where the arrows touch the outline itself
};

// Between two points, measured along X; the dimension line lies at height y.
void horizontal_dimension(Drawing& drawing, const Linear& size, double y);
// Measured along Y; the dimension line lies at x.
void vertical_dimension(Drawing& drawing, const Linear& size, double x);
// Measured along the points' own direction; the dimension line lies `offset` to the left of it.
void aligned_dimension(Drawing& drawing, const Linear& size, double offset);
// Arrows and text on a line that is drawn already, between two of its points.
void size_on_line(Drawing& drawing, const Linear& size);
// Whether the line would cross no text and its own text has a place where it covers nothing.
bool aligned_dimension_fits(const Drawing& drawing, const Linear& size, double offset);

// A straight stroke so near to a dimension line of the same direction that one could be taken for the other.
bool beside_parallel(const Drawing& drawing, const Segment& stroke);

// Of the angle from one direction to another (radians, anticlockwise positive sweep) about a point.
struct Angular {
  Vec2 vertex{0, 0};
  double from = 0;
  double sweep = 0;
  double radius = 0;
  std::string text;  // empty: a note says it
};
void angle_dimension(Drawing& drawing, const Angular& angle);

// A mark for the middle of a bore or circle: a cross of centre lines past the rim.
void centre_cross(Drawing& drawing, const Vec2& middle, double radius);

}  // namespace lamwright::drawing
