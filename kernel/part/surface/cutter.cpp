#include "kernel/part/surface/cutter.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::surface {
namespace {

Cutter across_sheet(Vec3 at, double thickness, const Bore& bore) {
  const bool near = bore.enters == kNearFace;
  at.z() = near ? 0 : thickness;
  return {at,
          {0, 0, near ? 1.0 : -1.0},
          {1, 0, 0},
          {0, near ? -1.0 : 1.0, 0},
          bore.diameter / 2,
          0,
          bore.length,
          bore.enters,
          bore.leaves};
}

Cutter along_sheet(const Vec3& at, const Vec3& axis, const Bore& bore) {
  const Vec2 in = axis.head<2>().normalized(), right = -left_of(in);
  return {at,          {in.x(), in.y(), 0}, {right.x(), right.y(), 0},
          {0, 0, 1},   bore.diameter / 2,   0,
          bore.length, bore.enters,         bore.leaves};
}

// The chord along the edge that lies nearest to a point.
int chord_at(const Rails& rails, const Mouth& mouth) {
  int best = 0;
  double least = INFINITY;
  for (int i = 0; i < rails.count(); ++i) {
    if (rails[i].edge != mouth.edge) continue;
    const double away = distance(line(rails[i].at, rails[i + 1].at), mouth.at);
    if (away < least) {
      least = away;
      best = i;
    }
  }
  return best;
}

}  // namespace

std::vector<Cutter> cutters_of(const Part& part, const Bore& bore) {
  const Vec3 at = part.sheet().local_point(bore.at);
  Cutter narrow = is_side(bore.enters) ? along_sheet(at, part.sheet().local_vector(bore.axis), bore)
                                       : across_sheet(at, part.thickness(), bore);
  if (!bore.counterbore) return {narrow};
  Cutter wide = narrow;
  wide.radius = bore.counterbore->diameter / 2;
  wide.to = narrow.from = bore.counterbore->depth;
  wide.leaves = narrow.enters = kNoFace;
  return {wide, narrow};
}

std::optional<Mouth> entry_mouth(const Cutter& cutter) {
  if (!is_side(cutter.enters)) return std::nullopt;
  return Mouth{cutter.at.head<2>(), cutter.x.head<2>(), cutter.at.z(), cutter.radius, cutter.enters};
}

std::optional<Mouth> exit_mouth(const Cutter& cutter) {
  if (!is_side(cutter.leaves)) return std::nullopt;
  return Mouth{(cutter.at + cutter.to * cutter.axis).head<2>(), -cutter.x.head<2>(), cutter.at.z(),
               cutter.radius, cutter.leaves};
}

Span span(const Mouth& mouth, const Rails& rails, const std::string& part) {
  const auto reach = [&](int i) { return mouth.reach(rails[i].at); };
  const int on = chord_at(rails, mouth);
  Span span{on, on + 1};
  while (reach(span.first) > -mouth.radius + kSnap && on - span.first < rails.count()) --span.first;
  while (reach(span.last) < mouth.radius - kSnap && span.last - on < rails.count()) ++span.last;
  bool open = span.last - span.first < rails.count();
  for (int i = span.first; i < span.last; ++i) open = open && reach(i + 1) > reach(i);
  if (!open)
    throw geometry_error(part,
                         "the edge within the mouth of the bore of " + number(2 * mouth.radius) + " at " +
                             point_text(mouth.at) + " lies along its axis or turns back",
                         "move the bore to where the edge is fair");
  return span;
}

std::vector<OnChord> ends(const Mouth& mouth, const Rails& rails, const std::string& part) {
  const Span over = span(mouth, rails, part);
  std::vector<OnChord> out;
  const auto add = [&](int chord, double wanted) {
    const double from = mouth.reach(rails[chord].at), to = mouth.reach(rails[chord + 1].at);
    const int n = rails.count();
    if (from < wanted && wanted < to) out.push_back({((chord % n) + n) % n, (wanted - from) / (to - from)});
  };
  add(over.first, -mouth.radius);
  add(over.last - 1, mouth.radius);
  return out;
}

}  // namespace lamwright::surface
