#include "exporters/drawing/box_index.hpp"

#include <algorithm>

namespace lamwright::drawing {
namespace {

constexpr int kMostCells = 64;      // along a side
constexpr std::size_t kInCell = 8;  // boxes on average before cells are made smaller

}  // namespace

BoxIndex::BoxIndex(const Box2& frame) : frame_(frame), entries_(1) {
  const Vec2 size = frame.size();
  for (const int axis : {0, 1}) per_step_[axis] = size[axis] > 0 ? 1 / size[axis] : 0;
}

void BoxIndex::add(const Box2& box) {
  boxes_.push_back(box);
  if (side_ < kMostCells && boxes_.size() > kInCell * entries_.size()) {
    side_ *= 2;
    per_step_ *= 2;
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
  const double steps = (at - frame_.low[axis]) * per_step_[axis];
  return steps > 0 ? static_cast<int>(std::min(steps, side_ - 1.0)) : 0;
}

BoxIndex::Cells BoxIndex::cells(const Box2& box) const {
  return {step(box.low.x(), 0), step(box.low.y(), 1), step(box.high.x(), 0), step(box.high.y(), 1)};
}

}  // namespace lamwright::drawing
