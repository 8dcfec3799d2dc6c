#include "exporters/drawing/box_index.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::drawing {
namespace {

constexpr int kMostCells = 64;      // along a side
constexpr std::size_t kInCell = 8;  // boxes on average before cells are made smaller

}  // namespace

void BoxIndex::add(const Box2& box) {
  boxes_.push_back(box);
  if (side_ < kMostCells && boxes_.size() > kInCell * entries_.size()) {
    side_ *= 2;
    entries_.assign(static_cast<std::size_t>(side_ * side_), {});
    for (std::uint32_t i = 0; i + 1 < boxes_.size(); ++i) enter(i);
  }
  enter(static_cast<std::uint32_t>(boxes_.size() - 1));
}

void BoxIndex::enter(std::uint32_t box) {
  const Cells in = cells(boxes_[box]);
  for (int row = in.bottom; row <= in.top; ++row)
    for (int column = in.left; column <= in.right; ++column)
      entries_[cell(column, row)].push_back({box, column > in.left, row > in.bottom});
}

int BoxIndex::step(double at, int axis) const {
  const double size = frame_.high[axis] - frame_.low[axis];
  if (!(size > 0)) return 0;
  return static_cast<int>(std::clamp(std::floor((at - frame_.low[axis]) / size * side_), 0.0, side_ - 1.0));
}

BoxIndex::Cells BoxIndex::cells(const Box2& box) const {
  return {step(box.low.x(), 0), step(box.low.y(), 1), step(box.high.x(), 0), step(box.high.y(), 1)};
}

}  // namespace lamwright::drawing
