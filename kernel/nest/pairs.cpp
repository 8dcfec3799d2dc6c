#include "kernel/nest/pairs.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

struct Measured {
  Arrangement pair;
  std::array<double, 3> cost{};
};

// Where an edge crosses the line at `off` (axis 0: x = off, axis 1: y = off), rounded either way.
void add_crossing(std::vector<GridPoint>& out, const GridEdge& e, int axis, Grid off) {
  const Grid a = axis == 0 ? e.from.x : e.from.y, b = axis == 0 ? e.to.x : e.to.y;
  if ((a < off) == (b < off) || a == b) return;
  const double share = static_cast<double>(off - a) / static_cast<double>(b - a);
  const Grid u = axis == 0 ? e.from.y : e.from.x, v = axis == 0 ? e.to.y : e.to.x;
  const double at = static_cast<double>(u) + share * static_cast<double>(v - u);
  for (const double rounded : {std::floor(at), std::ceil(at)}) {
    const Grid r = static_cast<Grid>(rounded);
    out.push_back(axis == 0 ? GridPoint{off, r} : GridPoint{r, off});
  }
}

// Corners of the zone, and where edges of the two boxes or their middles come into line.
std::vector<GridPoint> places(const Zone& zone, const Vec2& first, const Vec2& second) {
  std::vector<GridPoint> out;
  const Vec2 over = first - second;
  for (const GridEdge& e : zone.edges()) {
    out.push_back(e.from);
    for (int axis = 0; axis < 2; ++axis)
      for (const double share : {0.0, 0.5, 1.0}) add_crossing(out, e, axis, std::llround(share * over[axis]));
  }
  return out;
}

Measured measured(Arrangement pair, NoFit& no_fit) {
  const double along = static_cast<double>(pitch(pair, 0, no_fit));
  const double up = static_cast<double>(pitch(pair, 1, no_fit));
  const std::array<double, 3> cost{pair.size.x() * pair.size.y(), along * pair.size.y(), up * pair.size.x()};
  return {std::move(pair), cost};
}

bool same(const Arrangement& a, const Arrangement& b) {
  for (std::size_t i = 0; i < a.members.size(); ++i)
    if (a.members[i].turn != b.members[i].turn || !(a.members[i].at == b.members[i].at)) return false;
  return true;
}

void add_best(std::vector<Arrangement>& out, std::vector<Measured>& all, std::size_t measure,
              std::size_t most) {
  std::stable_sort(all.begin(), all.end(), [measure](const Measured& a, const Measured& b) {
    return a.cost[measure] < b.cost[measure];
  });
  std::size_t added = 0;
  for (const Measured& m : all) {
    if (added == most) return;
    const auto is_it = [&](const Arrangement& a) { return same(a, m.pair); };
    if (std::any_of(out.begin(), out.end(), is_it)) continue;
    out.push_back(m.pair);
    ++added;
  }
}

}  // namespace

std::vector<Arrangement> pairs(const std::vector<Shape>& shapes, std::size_t first, std::size_t second,
                               std::size_t most, NoFit& no_fit) {
  std::vector<Measured> all;
  for (const int turn : {2, 0}) {
    if (!shapes[second].allowed[turn]) continue;
    const Zone& zone = no_fit.zone(first, 0, second, turn);
    for (const GridPoint& p : places(zone, shapes[first].size[0], shapes[second].size[turn]))
      if (!zone.forbids(p))
        all.push_back(measured(settled({{first, 0, {0, 0}}, {second, turn, p}}, shapes), no_fit));
  }
  std::vector<Arrangement> out;
  for (std::size_t measure = 0; measure < 3; ++measure) add_best(out, all, measure, most);
  return out;
}

}  // namespace lamwright::nesting
