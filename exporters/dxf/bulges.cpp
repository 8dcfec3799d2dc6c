#include "exporters/dxf/bulges.hpp"

#include <cmath>

#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::dxf {
namespace {

constexpr double kLargestArc = radians(300);

}  // namespace

// Twice the step of coordinates: two points that far apart still differ when both are rounded.
bool without_length(const Segment& segment) { return segment.length() < 2 * kSamePoint; }

std::vector<Vertex> vertices(const drawing::Path& path) {
  std::vector<Vertex> out;
  Vec2 end{0, 0};
  for (const Segment& s : path.segments) {
    if (without_length(s)) continue;
    const bool halved = std::abs(s.turn) > kLargestArc;
    const double bulge = s.straight() ? 0 : std::tan(s.turn / (halved ? 8 : 4));
    out.push_back({s.from, bulge});
    if (halved) out.push_back({s.point(0.5), bulge});
    end = s.to;
  }
  if (!path.closed && !out.empty()) out.push_back({end, 0});
  return out;
}

}  // namespace lamwright::dxf
