// Where a sheet is still free: used to place notes so that no text covers a line or another text.
#pragma once
#include <vector>

#include "exporters/drawing/box_index.hpp"
#include "exporters/drawing/shape.hpp"

namespace lamwright::drawing {

// What was drawn so far; fills do not count, their edges do.
class Clearance {
 public:
  // Most of it lies within the box.
  explicit Clearance(const Box2& sheet) : boxes_(sheet), text_boxes_(sheet) {}

  // `stroked`: the shape's lines count as well as texts.
  void add(const Shape& shape, bool stroked);

  // No stroke and no text touches the box.
  bool free(const Box2& box) const;
  // The same for the text's own box, grown by `room` at both ends.
  bool free(const Text& text, double room) const;
  bool free_of_text(const Segment& stroke) const;
  int crossings_with(const Segment& stroke) const;
  // The straight stroke lies along another one and could be taken for it.
  bool runs_along(const Segment& stroke) const;

 private:
  // Of some stroke whose box overlaps.
  template <typename Test>
  bool any_near(const Box2& box, const Test& test) const {
    return boxes_.any(box, [&](std::size_t i) { return test(strokes_[i]); });
  }
  bool any_text(const Box2& box) const;

  std::vector<Segment> strokes_;
  BoxIndex boxes_;                        // of each stroke
  std::vector<std::vector<Vec2>> texts_;  // their corners
  BoxIndex text_boxes_;
};

bool within(const Box2& inner, const Box2& outer);
Box2 grown(const Box2& box, double by);
// Some point of the stroke lies in the box, or in the convex polygon (anticlockwise).
bool touches(const Segment& stroke, const Box2& box);
bool touches(const Segment& stroke, const std::vector<Vec2>& polygon);

}  // namespace lamwright::drawing
