#include "kernel/nest/depths.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

constexpr int kCells = 32;  // along either side, a power of 2

double square_to(const GridEdge& e, double x, double y) {
  const double ax = x - static_cast<double>(e.from.x), ay = y - static_cast<double>(e.from.y);
  const double dx = static_cast<double>(e.to.x - e.from.x), dy = static_cast<double>(e.to.y - e.from.y);
  const double share = std::clamp((ax * dx + ay * dy) * e.per_square, 0.0, 1.0);
  const double off_x = ax - share * dx, off_y = ay - share * dy;
  return off_x * off_x + off_y * off_y;
}

}  // namespace

double depth(const Zone& zone, GridPoint p) {
  if (!zone.forbids(p)) return 0;
  double least = INFINITY;
  for (const GridEdge& e : zone.edges())
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
  cells_.resize(kCells * kCells);
  lists_.resize(kCells * kCells);
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
    off.push_back(std::sqrt(square_to(zone_.edges()[i], x, y)));
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
  const auto cell = static_cast<std::size_t>(kept.row * kCells + kept.column);
  const GridPoint middle{static_cast<Grid>(x), static_cast<Grid>(y)};
  cells_[cell] = least <= reach + 2 ? Cell::crossed : zone_.forbids(middle) ? Cell::inside : Cell::outside;
  lists_[cell].first = static_cast<std::uint32_t>(nearest_.size());
  nearest_.insert(nearest_.end(), kept.edges.begin(), kept.edges.end());
  lists_[cell].second = static_cast<std::uint32_t>(nearest_.size());
}

double Depths::at(GridPoint p, std::int64_t& work) const {
  if (!zone_.box().inside(p)) return 0;
  const GridPoint off = p - low_;
  const auto cell = static_cast<std::size_t>(off.y / side_ * kCells + off.x / side_);
  if (cells_[cell] == Cell::outside) return 0;
  if (cells_[cell] == Cell::crossed) {
    work += 8;
    if (!zone_.forbids(p)) return 0;
  }
  double least = INFINITY;
  const auto [first, last] = lists_[cell];
  work += 6 * (last - first);
  for (std::uint32_t i = first; i < last; ++i)
    least = std::min(
        least, square_to(zone_.edges()[nearest_[i]], static_cast<double>(p.x), static_cast<double>(p.y)));
  return std::sqrt(least);
}

}  // namespace lamwright::nesting
