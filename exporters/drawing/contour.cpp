#include "exporters/drawing/contour.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace lamwright::drawing {
namespace {

// Marching squares (Lorensen and Cline 1987, in the plane). The grid gets a ring of nodes round it that lie
// below any level, at the places of its edge, so that every contour closes.
class March {
 public:
  March(const Grid& grid, double level)
      : grid_(grid), level_(level), columns_(grid.x.size() + 2), rows_(grid.y.size() + 2) {}

  std::vector<std::vector<Vec2>> loops() {
    for (std::size_t i = 0; i + 1 < columns_; ++i)
      for (std::size_t j = 0; j + 1 < rows_; ++j) cross_cell(i, j);
    std::vector<std::vector<Vec2>> out;
    while (!next_.empty()) out.push_back(follow(next_.begin()->first));
    return out;
  }

 private:
  struct Node {
    std::size_t i = 0, j = 0;
  };

  double value(const Node& n) const {
    const bool ring = n.i == 0 || n.j == 0 || n.i + 1 == columns_ || n.j + 1 == rows_;
    return ring ? -INFINITY : grid_.value[n.i - 1][n.j - 1];
  }
  Vec2 place(const Node& n) const {
    const auto on = [](const std::vector<double>& lines, std::size_t k) {
      return lines[std::min(k == 0 ? 0 : k - 1, lines.size() - 1)];
    };
    return {on(grid_.x, n.i), on(grid_.y, n.j)};
  }
  bool above(const Node& n) const { return value(n) > level_; }

  // An edge of the grid by the lower of its nodes and its direction.
  std::size_t edge(const Node& a, const Node& b) const {
    const std::size_t i = std::min(a.i, b.i), j = std::min(a.j, b.j);
    return 2 * (j * columns_ + i) + (a.i == b.i ? 1 : 0);
  }
  Vec2 crossing(std::size_t edge) const {
    const std::size_t node = edge / 2;
    const Node a{node % columns_, node / columns_};
    const Node b{a.i + (edge % 2 == 0 ? 1 : 0), a.j + (edge % 2 == 1 ? 1 : 0)};
    const double from = value(a), to = value(b);
    if (std::isinf(from) || std::isinf(to)) return place(a);  // the ring lies on the grid's own edge
    return place(a) + (level_ - from) / (to - from) * (place(b) - place(a));
  }

  // Round the cell anticlockwise, what is above on the left: a contour enters where the level is passed
  // downward and leaves where it is passed upward.
  void cross_cell(std::size_t i, std::size_t j) {
    const std::array<Node, 4> corners{{{i, j}, {i + 1, j}, {i + 1, j + 1}, {i, j + 1}}};
    const auto corner = [&](std::size_t k) { return corners[k % 4]; };
    const auto upward = [&](std::size_t k) { return !above(corner(k)) && above(corner(k + 1)); };
    double sum = 0;
    for (const Node& n : corners) sum += value(n);
    const std::size_t step = sum / 4 > level_ ? 1 : 3;  // which way past a saddle: its middle decides
    for (std::size_t k = 0; k < 4; ++k) {
      if (!above(corner(k)) || above(corner(k + 1))) continue;
      std::size_t out = k + step;
      while (!upward(out)) out += step;
      next_[edge(corner(k), corner(k + 1))] = edge(corner(out), corner(out + 1));
    }
  }

  std::vector<Vec2> follow(std::size_t start) {
    std::vector<Vec2> loop;
    for (auto at = next_.find(start); at != next_.end();) {
      loop.push_back(crossing(at->first));
      const std::size_t next = at->second;
      next_.erase(at);
      at = next_.find(next);
    }
    return loop;
  }

  const Grid& grid_;
  double level_;
  std::size_t columns_, rows_;
  std::map<std::size_t, std::size_t> next_;  // from edge to edge along the contours
};

}  // namespace

std::vector<std::vector<Vec2>> loops_above(const Grid& grid, double level) {
  return March(grid, level).loops();
}

}  // namespace lamwright::drawing
