// Distances between outlines of lines and arcs, in closed form; knows nothing of how pieces are nested.
#pragma once
#include <algorithm>
#include <cmath>
#include <vector>

#include "kernel/part/outline.hpp"
#include "kernel/part/placing.hpp"
#include "shared/units.hpp"

namespace lamwright::test {

// Share of an arc's sweep at a direction from its centre; outside 0 to 1 when the arc does not reach it.
inline double share_towards(const Segment& arc, const Vec2& out) {
  const Vec2 start = arc.from - arc.centre;
  double angle = std::atan2(cross(start, out), start.dot(out));
  if (arc.turn < 0) angle = -angle;
  if (angle < -1e-12) angle += 2 * kPi;
  return angle / std::abs(arc.turn);
}

inline double share_at(const Segment& s, const Vec2& p) {
  if (s.straight()) return (p - s.from).dot(s.to - s.from) / (s.to - s.from).squaredNorm();
  return share_towards(s, p - s.centre);
}

inline double from_point(const Segment& s, const Vec2& p) {
  const double ends = std::min((p - s.from).norm(), (p - s.to).norm());
  if (!s.straight() && (p - s.centre).norm() < 1e-12) return s.radius;
  const double share = share_at(s, p);
  if (share < 0 || share > 1) return ends;
  if (!s.straight()) return std::min(ends, std::abs((p - s.centre).norm() - s.radius));
  return std::min(ends, std::abs(cross((s.to - s.from).normalized(), p - s.from)));
}

// Least distance of two segments. Without a common point it is taken at an end of one of them or along a line
// square to both: through the centre of every arc.
inline double apart(const Segment& a, const Segment& b) {
  if (!crossings(a, b).empty()) return 0;
  double least =
      std::min({from_point(a, b.from), from_point(a, b.to), from_point(b, a.from), from_point(b, a.to)});
  const auto along = [&](const Segment& arc, const Segment& other, const Vec2& direction) {
    for (const double way : {1.0, -1.0}) {
      const double share = share_towards(arc, way * direction);
      if (share >= 0 && share <= 1)
        least = std::min(least, from_point(other, arc.centre + way * arc.radius * direction));
    }
  };
  const auto square = [](const Segment& s) { return left_of((s.to - s.from).normalized()); };
  if (!a.straight() && !b.straight() && (b.centre - a.centre).norm() > 1e-12)
    along(a, b, (b.centre - a.centre).normalized());
  if (!a.straight() && b.straight()) along(a, b, square(b));
  if (a.straight() && !b.straight()) along(b, a, square(a));
  return least;
}

inline std::vector<Segment> lying(const Outline& outline, const Placing& placing) {
  std::vector<Segment> out;
  for (const Segment& s : outline.segments()) out.push_back(placing.segment(s));
  return out;
}

inline Outline placed(const Outline& outline, const Placing& placing) {
  return {lying(outline, placing), "placed"};
}

// A point well inside: the farthest from the edge of those beside the middles of the edges and the centroid.
inline Vec2 inner_point(const Outline& o) {
  Vec2 best = o.centroid();
  double depth = o.contains(best) ? o.distance(best) : 0;
  for (const Segment& s : o.segments())
    for (const double in : {0.3, 0.1, 0.03, 0.01}) {
      const Vec2 p = s.point(0.5) + in * o.box().size().minCoeff() * left_of(s.tangent(0.5));
      if (o.contains(p) && o.distance(p) > depth) {
        best = p;
        depth = o.distance(p);
      }
    }
  return best;
}

inline bool boxes_apart(const Outline& a, const Outline& b, double by) {
  const Box2 p = a.box(), q = b.box();
  return ((p.low.array() > q.high.array() + by) || (q.low.array() > p.high.array() + by)).any();
}

// Distance of two outlines as areas: 0 also when one lies within the other.
inline double apart(const Outline& a, const Outline& b) {
  if (a.contains(inner_point(b)) || b.contains(inner_point(a))) return 0;
  double least = INFINITY;
  for (const Segment& s : a.segments())
    for (const Segment& t : b.segments()) least = std::min(least, apart(s, t));
  return least;
}

// How deep edges of one go into the other. Between two crossings an edge is either in or out, so its middle
// tells.
inline double edges_inside(const Outline& a, const Outline& b) {
  double deepest = 0;
  for (const Segment& s : a.segments()) {
    std::vector<double> cuts{0, 1};
    for (const Segment& t : b.segments())
      for (const Vec2& p : crossings(s, t)) cuts.push_back(std::clamp(share_at(s, p), 0.0, 1.0));
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      const Vec2 p = s.point((cuts[i] + cuts[i + 1]) / 2);
      if (b.contains(p)) deepest = std::max(deepest, b.distance(p));
    }
  }
  return deepest;
}

// 0 for outlines that touch at most. Two that coincide have no edge inside: an inner point tells.
inline double overlap(const Outline& a, const Outline& b) {
  double deepest = std::max(edges_inside(a, b), edges_inside(b, a));
  for (const auto& [in, other] : {std::pair{&a, &b}, std::pair{&b, &a}})
    if (other->contains(inner_point(*in))) deepest = std::max(deepest, other->distance(inner_point(*in)));
  return deepest;
}

}  // namespace lamwright::test
