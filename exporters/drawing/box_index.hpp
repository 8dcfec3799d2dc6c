// Boxes by place: asks only those near a question.
#pragma once
#include <algorithm>
#include <cstdint>
#include <vector>

#include "kernel/profile/segment.hpp"

namespace lamwright::drawing {

inline bool overlap(const Box2& a, const Box2& b) {
  return a.low.x() <= b.high.x() && b.low.x() <= a.high.x() && a.low.y() <= b.high.y() &&
         b.low.y() <= a.high.y();
}

class BoxIndex {
 public:
  // Asking is fast for boxes within the frame.
  explicit BoxIndex(const Box2& frame);

  // A finite box, not turned inside out; its index is the number of those before it.
  void add(const Box2& box);

  // True as soon as `test` is for the index of a box that overlaps; asks about each once, in no order.
  template <typename Test>
  bool any(const Box2& box, const Test& test) const {
    const Cells asked = cells(box);
    for (int row = asked.bottom; row <= asked.top; ++row)
      for (int column = asked.left; column <= asked.right; ++column)
        for (const Entry& entry : entries_[cell(column, row)]) {
          // A box stands in several cells: it is met in the first that it shares with the question.
          const bool first =
              (column == asked.left || !entry.from_left) && (row == asked.bottom || !entry.from_below);
          if (first && overlap(boxes_[entry.box], box) && test(std::size_t{entry.box})) return true;
        }
    return false;
  }

 private:
  struct Cells {
    int left = 0, bottom = 0, right = 0, top = 0;  // the last ones included
  };
  struct Entry {
    std::uint32_t box;
    bool from_left, from_below;  // it stands in the cell to the left too, in the one below
  };
  int step(double at, int axis) const;
  Cells cells(const Box2& box) const;  // beyond the frame: those at its edges
  std::size_t cell(int column, int row) const { return static_cast<std::size_t>(row * side_ + column); }
  void enter(std::uint32_t box);

  Box2 frame_;
  Vec2 per_step_{0, 0};  // 1 over the size of a cell; 0 for a frame without one
  int side_ = 1;         // cells along either side of the frame
  std::vector<Box2> boxes_;
  std::vector<std::vector<Entry>> entries_;  // of each cell
};

}  // namespace lamwright::drawing
