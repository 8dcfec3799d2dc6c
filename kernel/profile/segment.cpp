#include "kernel/profile/segment.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "shared/error.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

Vec2 turned(const Vec2& v, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {c * v.x() - s * v.y(), s * v.x() + c * v.y()};
}

// Share of the arc at which the ray from its centre to p lies; outside [0, 1] when p is not within the sweep.
double share_on_arc(const Segment& arc, const Vec2& p) {
  const Vec2 a = arc.from - arc.centre;
  const Vec2 b = p - arc.centre;
  double angle = std::atan2(cross(a, b), a.dot(b)) * (arc.turn < 0 ? -1 : 1);
  const double slack = kSamePoint / arc.radius;
  if (angle < -slack) angle += 2 * kPi;
  return angle / std::abs(arc.turn);
}

const std::array<Vec2, 4> kQuarters{direction(0), direction(kPi / 2), direction(kPi), direction(1.5 * kPi)};

// False for a way from the centre that the arc surely does not reach: no angle need be worked out.
bool may_reach(const Segment& arc, const Vec2& way) {
  if (std::abs(arc.turn) > 3) return true;
  const double slack = 1e-6 * arc.radius, sense = arc.turn < 0 ? -1 : 1;
  return sense * cross(arc.from - arc.centre, way) > -slack &&
         sense * cross(way, arc.to - arc.centre) > -slack;
}

bool holds(const Segment& s, const Vec2& p) {
  if (s.straight()) return distance(s, p) < kSamePoint;
  const double share = share_on_arc(s, p);
  const double slack = kSamePoint / s.length();
  return share > -slack && share < 1 + slack;
}

void keep_shared(std::vector<Vec2>& out, const Segment& a, const Segment& b, const Vec2& p) {
  if (!holds(a, p) || !holds(b, p)) return;
  for (const Vec2& q : out)
    if ((q - p).norm() < kSamePoint) return;
  out.push_back(p);
}

std::vector<Vec2> line_line(const Segment& a, const Segment& b) {
  const Vec2 u = a.to - a.from, v = b.to - b.from;
  const double across = cross(u, v);
  std::vector<Vec2> out;
  if (std::abs(across) > kTangent * u.norm() * v.norm()) {
    keep_shared(out, a, b, a.from + u * (cross(b.from - a.from, v) / across));
  } else {
    for (const Vec2& p : {a.from, a.to, b.from, b.to}) keep_shared(out, a, b, p);
  }
  return out;
}

std::vector<Vec2> line_arc(const Segment& l, const Segment& arc) {
  const Vec2 u = (l.to - l.from).normalized();
  const double along = (arc.centre - l.from).dot(u);
  const Vec2 foot = l.from + along * u;
  const double away = (foot - arc.centre).norm();
  std::vector<Vec2> out;
  if (away > arc.radius + kSamePoint) return out;
  const double half = std::sqrt(std::max(0.0, arc.radius * arc.radius - away * away));
  keep_shared(out, l, arc, foot - half * u);
  keep_shared(out, l, arc, foot + half * u);
  return out;
}

std::vector<Vec2> arc_arc(const Segment& a, const Segment& b) {
  const Vec2 between = b.centre - a.centre;
  const double d = between.norm();
  std::vector<Vec2> out;
  if (d < kSamePoint) {
    if (std::abs(a.radius - b.radius) < kSamePoint)
      for (const Vec2& p : {a.from, a.to, b.from, b.to}) keep_shared(out, a, b, p);
    return out;
  }
  if (d > a.radius + b.radius + kSamePoint || d < std::abs(a.radius - b.radius) - kSamePoint) return out;
  const double along = (d * d + a.radius * a.radius - b.radius * b.radius) / (2 * d);
  const double half = std::sqrt(std::max(0.0, a.radius * a.radius - along * along));
  const Vec2 u = between / d;
  for (const double side : {-half, half}) keep_shared(out, a, b, a.centre + along * u + side * left_of(u));
  return out;
}

}  // namespace

double Segment::length() const { return straight() ? (to - from).norm() : radius * std::abs(turn); }

Vec2 Segment::point(double share) const {
  if (share <= 0) return from;
  if (share >= 1) return to;
  return straight() ? Vec2(from + share * (to - from)) : Vec2(centre + turned(from - centre, share * turn));
}

Vec2 Segment::tangent(double share) const {
  if (straight()) return (to - from).normalized();
  const Vec2 outward = turned(from - centre, share * turn) / radius;
  return turn > 0 ? left_of(outward) : Vec2(-left_of(outward));
}

Segment line(const Vec2& from, const Vec2& to) { return {from, to, 0, {0, 0}, 0}; }

Segment segment(const Pose& from, const Run& run) {
  const Vec2 to = walked(from, run.curvature, run.length).point;
  if (run.straight()) return line(from.point, to);
  return {from.point, to, -run.turn(), from.point - from.normal() / run.curvature,
          1 / std::abs(run.curvature)};
}

std::vector<Segment> segments(const Profile& profile) {
  std::vector<Segment> out;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    out.push_back(segment(profile.pose(i), profile.runs()[i]));
    out.back().to = profile.pose(i + 1).point;
  }
  return out;
}

Profile cut(const Profile& profile, double from, double to) {
  ensure(from >= -kSamePoint && to <= profile.girth() + kSamePoint && to - from > kSamePoint,
         "a cut lies on its profile");
  std::vector<Run> runs;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    const double a = std::max(from, profile.station(i));
    const double b = std::min(to, profile.station(i + 1));
    if (b - a > kSamePoint) runs.push_back({b - a, profile.runs()[i].curvature});
  }
  return {profile.at(from), std::move(runs)};
}

Box2 box(const Segment& segment) {
  Box2 box;
  box.add(segment.from);
  box.add(segment.to);
  if (segment.straight()) return box;
  for (const Vec2& way : kQuarters) {
    if (!may_reach(segment, way)) continue;
    const Vec2 extreme = segment.centre + segment.radius * way;
    const double share = share_on_arc(segment, extreme);
    if (share > 0 && share < 1) box.add(extreme);
  }
  return box;
}

double distance(const Segment& segment, const Vec2& p) {
  if (segment.straight()) {
    const Vec2 u = segment.to - segment.from;
    const double share = std::clamp((p - segment.from).dot(u) / u.squaredNorm(), 0.0, 1.0);
    return (segment.from + share * u - p).norm();
  }
  const double share = share_on_arc(segment, p);
  if (share >= 0 && share <= 1) return std::abs((p - segment.centre).norm() - segment.radius);
  return std::min((p - segment.from).norm(), (p - segment.to).norm());
}

std::vector<Vec2> crossings(const Segment& a, const Segment& b) {
  if (a.straight() && b.straight()) return line_line(a, b);
  if (a.straight()) return line_arc(a, b);
  if (b.straight()) return line_arc(b, a);
  return arc_arc(a, b);
}

}  // namespace lamwright
