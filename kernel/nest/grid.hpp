// Whole-number coordinates of the nest: sums and comparisons of positions are exact.
#pragma once
#include <algorithm>
#include <cstdint>
#include <limits>
#include <vector>

namespace lamwright::nesting {

using Grid = std::int64_t;

struct GridPoint {
  Grid x = 0;
  Grid y = 0;
  friend GridPoint operator+(GridPoint a, GridPoint b) { return {a.x + b.x, a.y + b.y}; }
  friend GridPoint operator-(GridPoint a, GridPoint b) { return {a.x - b.x, a.y - b.y}; }
  friend bool operator==(GridPoint a, GridPoint b) { return a.x == b.x && a.y == b.y; }
};

// Exact while coordinates stay below 1e9.
inline Grid cross(GridPoint a, GridPoint b) { return a.x * b.y - a.y * b.x; }
inline Grid dot(GridPoint a, GridPoint b) { return a.x * b.x + a.y * b.y; }

inline GridPoint turned(GridPoint p, int quarters) {
  switch (quarters & 3) {
    case 1:
      return {-p.y, p.x};
    case 2:
      return {-p.x, -p.y};
    case 3:
      return {p.y, -p.x};
    default:
      return p;
  }
}

struct GridBox {
  GridPoint low{std::numeric_limits<Grid>::max() / 4, std::numeric_limits<Grid>::max() / 4};
  GridPoint high{std::numeric_limits<Grid>::min() / 4, std::numeric_limits<Grid>::min() / 4};
  void add(GridPoint p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  bool inside(GridPoint p) const { return p.x > low.x && p.x < high.x && p.y > low.y && p.y < high.y; }
  bool meets(const GridBox& b) const {
    return low.x <= b.high.x && b.low.x <= high.x && low.y <= b.high.y && b.low.y <= high.y;
  }
  GridBox shared(const GridBox& b) const {
    return {{std::max(low.x, b.low.x), std::max(low.y, b.low.y)},
            {std::min(high.x, b.high.x), std::min(high.y, b.high.y)}};
  }
  GridBox moved(GridPoint by) const { return {low + by, high + by}; }
};

// A closed loop of corners; anticlockwise round material.
using GridLoop = std::vector<GridPoint>;

inline GridBox box(const GridLoop& loop) {
  GridBox all;
  for (const GridPoint& p : loop) all.add(p);
  return all;
}

inline GridLoop turned(const GridLoop& loop, int quarters) {
  GridLoop out;
  out.reserve(loop.size());
  for (const GridPoint& p : loop) out.push_back(turned(p, quarters));
  return out;
}

}  // namespace lamwright::nesting
