// What a drawing is made of. Lengths in mm on paper, y points up.
#pragma once
#include <string>
#include <variant>
#include <vector>

#include "kernel/profile/segment.hpp"

namespace lamwright::drawing {

enum class Anchor { left, middle, right };

// One line of text. `at` is the anchor on the base line; height is that of the capitals (ISO 3098); angle in
// radians, anticlockwise.
struct Text {
  Vec2 at{0, 0};
  std::string text;
  double height = 2.5;
  Anchor anchor = Anchor::left;
  double angle = 0;
};

struct Circle {
  Vec2 centre{0, 0};
  double radius = 0;
  std::string fill;  // empty: not filled
};

// Lines and arcs, each beginning where the one before ends.
struct Path {
  std::vector<Segment> segments;
  bool closed = false;
  std::string fill;  // empty: not filled
};

// What lies inside an odd number of closed loops, so that a loop within another is a hole.
struct Area {
  std::vector<Path> loops;
  std::string fill;
};

using Shape = std::variant<Segment, Path, Circle, Area, Text>;

// The straight lines and arcs that a shape is drawn with; a circle as two half circles, a text as none.
std::vector<Segment> strokes(const Shape& shape);

// Closed path through points.
Path polygon(const std::vector<Vec2>& points, std::string fill = {});
Path rectangle(const Box2& box, std::string fill = {});

}  // namespace lamwright::drawing
