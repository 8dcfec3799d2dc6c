#include "kernel/nest/depths.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

constexpr int kCells = 32;  // along either side, a power of 2

double square_to(const RealEdge& e, double x, double y) {
  const double ax = x - e.x, ay = y - e.y;
  const double share = std::clamp((ax * e.along + ay * e.up) * e.per_square, 0.0, 1.0);
  const double off_x = ax - share * e.along, off_y = ay - share * e.up;
  return off_x * off_x + off_y * off_y;
}

}  // namespace

double depth(const Zone& zone, GridPoint p) {
  if (!zone.forbids(p)) return 0;
  double least = INFINITY;
  for (const RealEdge& e : zone.real_edges())
    least = std::min(least, square_to(e, static_cast<double>(p.x), static_cast<double>(p.y)));
  return std::sqrt(least);
}

// A square of cells and the edges near it.
struct Depths::Part {
  int column = 0, row = 0, cells = kCells;
  std::vector<std::uint32_t> edges;
};

Depths::Depths(const Zone& zone, std::int64_t& work) : zone_(zone), low_(zone.box().low) {
  const GridPoint size = zone.box().high - low_;
  side_ = std::max(size.x, size.y) / kCells + 1;
  per_side_ = 1 / static_cast<double>(side_);
  cells_.resize(kCells * kCells);
  Part all;
  for (std::uint32_t i = 0; i < zone.edges().size(); ++i) all.edges.push_back(i);
  divide(all, work);
}

// Keeps the edges that may be nearest to some place of the part, then halves it both ways.
void Depths::divide(const Part& part, std::int64_t& work) {
  work += 6 * static_cast<std::int64_t>(part.edges.size());
  const double half = static_cast<double>(side_) * part.cells / 2;
  const double x = static_cast<double>(low_.x + side_ * part.column) + half;
  const double y = static_cast<double>(low_.y + side_ * part.row) + half;
  std::vector<double> off;
  double least = INFINITY;
  for (const std::uint32_t i : part.edges) {
    off.push_back(std::sqrt(square_to(zone_.real_edges()[i], x, y)));
    least = std::min(least, off.back());
  }
  Part kept{part.column, part.row, part.cells, {}};
  const double reach = 1.001 * std::sqrt(2) * half;  // from the middle to a corner
  for (std::size_t i = 0; i < off.size(); ++i)
    if (off[i] <= least + 2 * reach) kept.edges.push_back(part.edges[i]);
  if (kept.cells > 1) {
    const int next = kept.cells / 2;
    for (const int up : {0, next})
      for (const int along : {0, next}) divide({kept.column + along, kept.row + up, next, kept.edges}, work);
    return;
  }
  Cell& cell = cells_[static_cast<std::size_t>(kept.row * kCells + kept.column)];
  const GridPoint middle{static_cast<Grid>(x), static_cast<Grid>(y)};
  cell.lies = least <= reach + 2 ? Lies::crossed : zone_.forbids(middle) ? Lies::inside : Lies::outside;
  cell.first = static_cast<std::uint32_t>(nearest_.size());
  nearest_.insert(nearest_.end(), kept.edges.begin(), kept.edges.end());
  cell.last = static_cast<std::uint32_t>(nearest_.size());
}

// Whole sides in a distance of 0 or more. Dividing whole numbers is slow; the estimate is one off at most.
Grid Depths::sides(Grid off) const {
  const Grid near = static_cast<Grid>(static_cast<double>(off) * per_side_), over = off - near * side_;
  return near + (over >= side_ ? 1 : 0) - (over < 0 ? 1 : 0);
}

double Depths::at(GridPoint p, std::int64_t& work) const {
  if (!zone_.box().inside(p)) return 0;
  const GridPoint off = p - low_;
  const Cell& cell = cells_[static_cast<std::size_t>(sides(off.y) * kCells + sides(off.x))];
  if (cell.lies == Lies::outside) return 0;
  if (cell.lies == Lies::crossed) {
    work += 8;
    if (!zone_.forbids(p)) return 0;
  }
  work += 6 * (cell.last - cell.first);
  const double x = static_cast<double>(p.x), y = static_cast<double>(p.y);
  double least = INFINITY;
  for (std::uint32_t i = cell.first; i < cell.last; ++i)
    least = std::min(least, square_to(zone_.real_edges()[nearest_[i]], x, y));
  return std::sqrt(least);
}

}  // namespace lamwright::nesting
