#include "kernel/nest/group.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

Vec2 real(GridPoint p) { return {static_cast<double>(p.x), static_cast<double>(p.y)}; }

bool all_allow(const Arrangement& of, const std::vector<Shape>& shapes, int quarters) {
  return std::all_of(of.members.begin(), of.members.end(),
                     [&](const Member& m) { return shapes[m.piece].allowed[(m.turn + quarters) & 3]; });
}

// About the origins of the polygons, which turn exactly: members keep their places to one another.
Arrangement turned_whole(const Arrangement& of, const std::vector<Shape>& shapes, int quarters) {
  std::vector<Member> members = of.members;
  for (Member& m : members) {
    const Shape& shape = shapes[m.piece];
    const GridPoint origin = turned(m.at - shape.low[m.turn], quarters);
    m.turn = (m.turn + quarters) & 3;
    m.at = origin + shape.low[m.turn];
  }
  return settled(std::move(members), shapes);
}

// The farthest crossing of a zone's edges with the line through `off` along the axis; 0 when they do not
// meet.
Grid last_exit(const Zone& zone, Grid off, int axis) {
  double farthest = 0;
  for (const GridEdge& e : zone.edges()) {
    const Grid a = axis == 0 ? e.from.y : e.from.x, b = axis == 0 ? e.to.y : e.to.x;
    if (std::min(a, b) > off || std::max(a, b) < off) continue;
    const Grid u = axis == 0 ? e.from.x : e.from.y, v = axis == 0 ? e.to.x : e.to.y;
    const double share = a == b ? 0 : static_cast<double>(off - a) / static_cast<double>(b - a);
    farthest = std::max({farthest, a == b ? static_cast<double>(std::max(u, v)) : 0.0,
                         static_cast<double>(u) + share * static_cast<double>(v - u)});
  }
  return static_cast<Grid>(std::ceil(farthest));
}

}  // namespace

Arrangement settled(std::vector<Member> members, const std::vector<Shape>& shapes) {
  GridPoint low = members.front().at;
  Vec2 high = real(low);
  for (const Member& m : members) {
    low = {std::min(low.x, m.at.x), std::min(low.y, m.at.y)};
    high = high.cwiseMax(real(m.at) + shapes[m.piece].size[m.turn]);
  }
  for (Member& m : members) m.at = m.at - low;
  return {std::move(members), high - real(low), false};
}

Group all_turns(const Arrangement& first, const std::vector<Shape>& shapes) {
  Group out;
  for (int quarters = 0; quarters < 4; ++quarters)
    if (all_allow(first, shapes, quarters)) out.push_back(turned_whole(first, shapes, quarters));
  return out;
}

Group single(const std::vector<Shape>& shapes, std::size_t piece) {
  Group out;
  for (int turn = 0; turn < 4; ++turn)
    if (shapes[piece].distinct[turn])
      out.push_back({{{piece, turn, {0, 0}}}, shapes[piece].size[turn], false});
  return out;
}

Grid clearance(const Arrangement& first, const Arrangement& second, int axis, NoFit& no_fit) {
  Grid least = 0;
  for (const Member& lying : first.members)
    for (const Member& moving : second.members) {
      const GridPoint between = moving.at - lying.at;
      const Zone& zone = no_fit.zone(lying.piece, lying.turn, moving.piece, moving.turn);
      const Grid exit = last_exit(zone, axis == 0 ? between.y : between.x, axis);
      least = std::max(least, exit - (axis == 0 ? between.x : between.y));
    }
  return least;
}

Grid pitch(const Arrangement& of, int axis, NoFit& no_fit) { return clearance(of, of, axis, no_fit); }

Arrangement row(const Arrangement& of, const std::vector<Shape>& shapes, int axis, int count, NoFit& no_fit) {
  const Grid step = pitch(of, axis, no_fit);
  std::vector<Member> members;
  for (int i = 0; i < count; ++i)
    for (Member m : of.members) {
      (axis == 0 ? m.at.x : m.at.y) += i * step;
      members.push_back(m);
    }
  return settled(std::move(members), shapes);
}

}  // namespace lamwright::nesting
