// Where a sheet is still free: used to place notes so that no text covers a line or another text.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

inline bool overlap(const Box2& a, const Box2& b) {
  return a.low.x() <= b.high.x() && b.low.x() <= a.high.x() && a.low.y() <= b.high.y() &&
         b.low.y() <= a.high.y();
}

// A snapshot of what a drawing holds; fills do not count, their edges do.
class Clearance {
 public:
  explicit Clearance(const Drawing& drawing);

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
    for (std::size_t i = 0; i < boxes_.size(); ++i)
      if (overlap(boxes_[i], box) && test(strokes_[i])) return true;
    return false;
  }

  std::vector<Segment> strokes_;
  std::vector<Box2> boxes_;  // of each stroke: most questions end there
  struct Words {
    std::vector<Vec2> corners;
    Box2 box;
  };
  static Words words(const Text& text);
  std::vector<Words> texts_;
};

bool within(const Box2& inner, const Box2& outer);
Box2 grown(const Box2& box, double by);
// Some point of the stroke lies in the box, or in the convex polygon (anticlockwise).
bool touches(const Segment& stroke, const Box2& box);
bool touches(const Segment& stroke, const std::vector<Vec2>& polygon);

}  // namespace lamwright::drawing
