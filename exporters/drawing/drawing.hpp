// The drawing model that every drawing format writes out: a sheet in mm, pens, and items on it. y points up.
#pragma once
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "kernel/profile/segment.hpp"

namespace lamwright::drawing {

// A layer: what is drawn with one pen. width in mm, 0 = fills only; dashes are lengths drawn and skipped in
// turn (empty: continuous); colour "#rrggbb".
struct Pen {
  std::string name;
  double width = 0.25;
  std::vector<double> dashes;
  std::string colour = "#000000";
};

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

struct Item {
  std::size_t pen = 0;
  Shape shape;
};

// Grows by adding; pens keep the order given, which is the order of painting.
class Drawing {
 public:
  Drawing(std::string title, const Vec2& size, std::vector<Pen> pens);

  // The pen must be among those given.
  void add(std::string_view pen, Shape shape);

  const std::string& title() const { return title_; }
  const Vec2& size() const { return size_; }
  const std::vector<Pen>& pens() const { return pens_; }
  const std::vector<Item>& items() const { return items_; }

 private:
  std::string title_;
  Vec2 size_;
  std::vector<Pen> pens_;
  std::vector<Item> items_;
};

// The straight lines and arcs that a shape is drawn with; a circle as two half circles, a text as none.
std::vector<Segment> strokes(const Shape& shape);

// Closed path through points.
Path polygon(const std::vector<Vec2>& points, std::string fill = {});
Path rectangle(const Box2& box, std::string fill = {});

}  // namespace lamwright::drawing
