#include "kernel/nest/no_fit.hpp"

#include "kernel/nest/minkowski.hpp"

namespace lamwright::nesting {
namespace {

constexpr Grid kBands = 32;
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
      const GridPoint from = loop[i], to = loop[(i + 1) % loop.size()];
      const double square = static_cast<double>(dot(to - from, to - from));
      edges_.push_back({from, to, nesting::box({from, to}), 1 / square});
      box_.add(from);
    }
  band_ = (box_.high.y - box_.low.y) / kBands + 1;
  bands_.resize(kBands);
  for (const GridEdge& e : edges_)
    for (Grid band = (e.box.low.y - box_.low.y) / band_; band <= (e.box.high.y - box_.low.y) / band_; ++band)
      bands_[static_cast<std::size_t>(band)].push_back(e);
}

bool Zone::forbids(GridPoint p) const {
  if (!box_.inside(p)) return false;
  bool inside = false;
  for (const GridEdge& e : bands_[static_cast<std::size_t>((p.y - box_.low.y) / band_)]) {
    if ((e.from.y > p.y) == (e.to.y > p.y)) {
      if (e.from == p) return false;
      if (e.from.y == p.y && e.to.y == p.y && (e.from.x > p.x) != (e.to.x > p.x)) return false;
      continue;
    }
    const Grid side = cross(e.to - e.from, p - e.from);
    if (side == 0) return false;
    if ((side > 0) == (e.to.y > e.from.y)) inside = !inside;
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
