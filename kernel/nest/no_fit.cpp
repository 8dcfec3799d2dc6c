#include "kernel/nest/no_fit.hpp"

#include "kernel/nest/minkowski.hpp"

namespace lamwright::nesting {
namespace {

constexpr Grid kMostBands = 128;
// What the union may have moved a corner by.
constexpr Grid kRounding = 2;

std::vector<GridLoop> zone_loops(const Shape& lying, const Shape& moving, int turn, Grid spacing) {
  PolygonSum all = sum(lying.polygon, turned(moving.polygon, turn + 2));
  const bool plain = all.loops.size() == 1 && convex(all.loops.front());
  Grid radius = spacing + lying.slack + moving.slack;
  if (!all.exact) radius += kRounding;
  if (radius > 0 && !plain) radius += kRounding;
  return grown(all, radius).loops;
}

}  // namespace

Zone::Zone(const std::vector<GridLoop>& loops) {
  for (const GridLoop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const GridPoint from = loop[i], to = loop[(i + 1) % loop.size()], way = to - from;
      const double square = static_cast<double>(dot(way, way));
      edges_.push_back({from, to, nesting::box({from, to}), 1 / square});
      real_edges_.push_back({static_cast<double>(from.x), static_cast<double>(from.y),
                             static_cast<double>(way.x), static_cast<double>(way.y), 1 / square});
      box_.add(from);
    }
  divide();
}

void Zone::divide() {
  while (band(box_.high.y) >= kMostBands) ++shift_;
  begins_.assign(static_cast<std::size_t>(band(box_.high.y)) + 2, 0);
  for (const GridEdge& e : edges_)
    for (Grid b = band(e.box.low.y); b <= band(e.box.high.y); ++b) ++begins_[static_cast<std::size_t>(b) + 1];
  for (std::size_t b = 1; b < begins_.size(); ++b) begins_[b] += begins_[b - 1];
  by_band_.resize(begins_.back());
  std::vector<std::uint32_t> next = begins_;
  for (const GridEdge& e : edges_)
    for (Grid b = band(e.box.low.y); b <= band(e.box.high.y); ++b)
      by_band_[next[static_cast<std::size_t>(b)]++] = {e.from, e.to};
}

bool Zone::forbids(GridPoint p) const {
  if (!box_.inside(p)) return false;
  bool inside = false;
  const auto b = static_cast<std::size_t>(band(p.y));
  for (std::uint32_t i = begins_[b]; i < begins_[b + 1]; ++i) {
    const auto& [from, to] = by_band_[i];
    if ((from.y > p.y) == (to.y > p.y)) {
      if (from == p) return false;
      if (from.y == p.y && to.y == p.y && (from.x > p.x) != (to.x > p.x)) return false;
      continue;
    }
    const Grid side = cross(to - from, p - from);
    if (side == 0) return false;
    if ((side > 0) == (to.y > from.y)) inside = !inside;
  }
  return inside;
}

// The moving piece turned against the lying one; both lie in the frames of their polygons.
const std::vector<GridLoop>& NoFit::turned_back(std::size_t lying, std::size_t moving, int turn) {
  const auto key = std::make_tuple(lying, moving, turn);
  const auto found = loops_.find(key);
  if (found != loops_.end()) return found->second;
  return loops_.emplace(key, zone_loops(shapes_[lying], shapes_[moving], turn, spacing_)).first->second;
}

const Zone& NoFit::zone(std::size_t lying, int lying_turn, std::size_t moving, int moving_turn) {
  const std::size_t pair = lying * shapes_.size() + moving;
  std::optional<Zone>& zone = zones_[16 * pair + static_cast<std::size_t>(4 * lying_turn + moving_turn)];
  if (zone) return *zone;
  std::vector<GridLoop> loops;
  for (const GridLoop& loop : turned_back(lying, moving, (moving_turn - lying_turn) & 3)) {
    loops.push_back(turned(loop, lying_turn));
    for (GridPoint& p : loops.back())
      p = p - shapes_[lying].low[lying_turn] + shapes_[moving].low[moving_turn];
  }
  return zone.emplace(loops);
}

}  // namespace lamwright::nesting
