// Two bars of exactly 100, across and up, that prove the size of a print or of a file read in.
#pragma once
#include <functional>
#include <optional>

#include "exporters/drawing/operations.hpp"

namespace lamwright::drawing {

// With their figure, on CHECK_100; both begin at the corner.
std::vector<Operation> size_bars(const Vec2& corner);

// Lowest, then leftmost corner of a grid of `step` in the drawing's sheet, `edge` inside it, where bars and
// figure lie on nothing drawn and each bar is `allowed`. Nothing when there is no such place.
struct BarSearch {
  double edge = 6;
  double step = 10;
  double clear = 2;  // beside each bar
  std::function<bool(const Segment& bar)> allowed;
};
std::optional<Vec2> free_corner(const Drawing& drawing, const BarSearch& search);

}  // namespace lamwright::drawing
