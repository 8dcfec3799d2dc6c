#include "exporters/drawing/doubled.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kNear = 0.01, kLeast = 0.1;

bool lines_overlap(const Segment& a, const Segment& b) {
  const Vec2 along = (a.to - a.from).normalized();
  const double from = (b.from - a.from).dot(along), to = (b.to - a.from).dot(along);
  const double low = std::max(0.0, std::min(from, to)), high = std::min(a.length(), std::max(from, to));
  if (high - low <= kLeast) return false;
  return distance(b, a.from + low * along) < kNear && distance(b, a.from + high * along) < kNear;
}

// Angles swept, from a first one within a turn of zero, always upward.
struct Sweep {
  double from, to;
};

Sweep swept(const Segment& arc) {
  const Vec2 begin = (arc.turn > 0 ? arc.from : arc.to) - arc.centre;
  const double from = std::atan2(begin.y(), begin.x());
  return {from, from + std::abs(arc.turn)};
}

bool arcs_overlap(const Segment& a, const Segment& b) {
  if ((a.centre - b.centre).norm() > kNear || std::abs(a.radius - b.radius) > kNear) return false;
  const Sweep one = swept(a), other = swept(b);
  for (const double round : {-2 * kPi, 0.0, 2 * kPi}) {
    const double shared = std::min(one.to, other.to + round) - std::max(one.from, other.from + round);
    if (shared * a.radius > kLeast) return true;
  }
  return false;
}

bool lies_along(const Segment& shorter, const Segment& longer) {
  constexpr int kSamples = 8;
  if (shorter.length() <= kLeast) return false;
  for (int i = 0; i <= kSamples; ++i)
    if (distance(longer, shorter.point(double(i) / kSamples)) >= kNear) return false;
  return true;
}

bool coincide(const Segment& a, const Segment& b) {
  if (a.straight() && b.straight() && lines_overlap(a, b)) return true;
  if (!a.straight() && !b.straight() && arcs_overlap(a, b)) return true;
  return a.length() < b.length() ? lies_along(a, b) : lies_along(b, a);
}

struct Stroke {
  std::size_t pen;
  Segment segment;
  Box2 box;
};

std::vector<Stroke> strokes_by_place(const Drawing& drawing, std::string_view layer) {
  std::vector<Stroke> out;
  for (const Item& item : drawing.items()) {
    if (!layer.empty() && drawing.pens()[item.pen].name != layer) continue;
    for (const Segment& s : strokes(item.shape))
      if (s.length() > 0) out.push_back({item.pen, s, grown(lamwright::box(s), kNear)});
  }
  std::stable_sort(out.begin(), out.end(), [](const Stroke& a, const Stroke& b) {
    return a.pen != b.pen ? a.pen < b.pen : a.box.low.x() < b.box.low.x();
  });
  return out;
}

}  // namespace

std::vector<Doubled> doubled_lines(const Drawing& drawing, std::string_view layer) {
  const std::vector<Stroke> all = strokes_by_place(drawing, layer);
  std::vector<Doubled> out;
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = i + 1; j < all.size() && all[j].pen == all[i].pen; ++j) {
      if (all[j].box.low.x() > all[i].box.high.x()) break;
      if (overlap(all[i].box, all[j].box) && coincide(all[i].segment, all[j].segment))
        out.push_back({drawing.pens()[all[i].pen].name, all[i].segment, all[j].segment});
    }
  return out;
}

}  // namespace lamwright::drawing
