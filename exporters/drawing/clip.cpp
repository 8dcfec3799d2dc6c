#include "exporters/drawing/clip.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// Share of the arc's sweep at an angle from its centre; beyond 1 when the arc does not reach it.
double share_at(const Segment& arc, double angle) {
  const Vec2 start = arc.from - arc.centre;
  double swept = (angle - std::atan2(start.y(), start.x())) * (arc.turn < 0 ? -1 : 1);
  swept = std::fmod(swept, 2 * kPi);
  return (swept < 0 ? swept + 2 * kPi : swept) / std::abs(arc.turn);
}

// Shares at which the segment meets the line where the coordinate `axis` has a value.
void add_meetings(std::vector<double>& shares, const Segment& s, int axis, double value) {
  if (s.straight()) {
    if (s.from[axis] != s.to[axis]) shares.push_back((value - s.from[axis]) / (s.to[axis] - s.from[axis]));
    return;
  }
  const double part = (value - s.centre[axis]) / s.radius;
  if (std::abs(part) > 1) return;
  const double middle = axis == 0 ? 0 : kPi / 2, half = std::acos(part);
  shares.push_back(share_at(s, middle - half));
  shares.push_back(share_at(s, middle + half));
}

// Ends and meetings with the box's four sides, ascending.
std::vector<double> stations(const Segment& s, const Box2& box) {
  std::vector<double> all{0, 1};
  for (const int axis : {0, 1})
    for (const double value : {box.low[axis], box.high[axis]}) add_meetings(all, s, axis, value);
  std::erase_if(all, [](double share) { return share < 0 || share > 1; });
  std::sort(all.begin(), all.end());
  return all;
}

Segment piece(const Segment& s, double from, double to) {
  return {s.point(from), s.point(to), s.turn * (to - from), s.centre, s.radius};
}

bool holds(const Box2& box, const Vec2& p) {
  const Box2 edged = grown(box, kSamePoint);
  return within({p, p}, edged);
}

}  // namespace

std::vector<Segment> clipped(const Segment& segment, const Box2& box) {
  const Box2 own = lamwright::box(segment);
  if (!overlap(own, box)) return {};
  if (within(own, box)) return {segment};
  std::vector<Segment> out;
  const std::vector<double> at = stations(segment, box);
  for (std::size_t i = 0; i + 1 < at.size();) {
    std::size_t end = i;
    while (end + 1 < at.size() && holds(box, segment.point((at[end] + at[end + 1]) / 2))) ++end;
    if ((at[end] - at[i]) * segment.length() > kSamePoint) out.push_back(piece(segment, at[i], at[end]));
    i = std::max(end, i + 1);
  }
  return out;
}

std::vector<Path> clipped(const Path& path, const Box2& box) {
  const auto inside = [&](const Segment& s) { return within(lamwright::box(s), box); };
  if (std::all_of(path.segments.begin(), path.segments.end(), inside))
    return {{path.segments, path.closed, {}}};
  std::vector<Path> out;
  for (const Segment& s : path.segments)
    for (const Segment& kept : clipped(s, box)) {
      const bool follows = !out.empty() && (out.back().segments.back().to - kept.from).norm() < kSamePoint;
      if (!follows) out.push_back({});
      out.back().segments.push_back(kept);
    }
  return out;
}

}  // namespace lamwright::drawing
