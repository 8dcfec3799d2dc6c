#include "exporters/drawing/seen_points.hpp"

#include "kernel/profile/segment.hpp"

namespace lamwright::drawing {

std::vector<Vec2> seen_points(const std::vector<Vec2>& points) {
  std::vector<Vec2> kept;
  for (const Vec2& p : points) {
    if (!kept.empty() && (p - kept.back()).norm() < kSeen) continue;
    const std::size_t n = kept.size();
    if (n > 1 && distance(line(kept[n - 2], p), kept[n - 1]) < kSeen) kept.pop_back();
    kept.push_back(p);
  }
  return kept;
}

std::vector<Vec2> seen_loop(const std::vector<Vec2>& points) {
  std::vector<Vec2> kept = seen_points(points);
  while (kept.size() > 1 && (kept.front() - kept.back()).norm() < kSeen) kept.pop_back();
  return kept;
}

}  // namespace lamwright::drawing
