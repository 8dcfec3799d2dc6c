#include "kernel/reading/dxf/arcs.hpp"

#include <cmath>

#include "kernel/profile/drawn/elliptic.hpp"
#include "kernel/reading/dxf/placed.hpp"
#include "kernel/reading/dxf/plane.hpp"
#include "kernel/reading/dxf/sweep.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright::dxf_reading {
namespace {

// Written with 12 decimals or more.
constexpr double kRound = 1e-12;

Segment arc(const Vec2& centre, double radius, const Sweep& sweep) {
  const auto at = [&](double angle) { return Vec2(centre + radius * direction(angle)); };
  return {at(sweep.from), at(sweep.from + sweep.turn), sweep.turn, centre, radius};
}

// A segment turns by less than a full circle: a circle is two halves.
Outline round(const Vec2& centre, double radius, const Sweep& sweep) {
  if (sweep.turn < 2 * kPi) return {{arc(centre, radius, sweep)}, false};
  const Segment first = arc(centre, radius, {sweep.from, kPi});
  return {{first, Segment{first.to, first.from, kPi, centre, radius}}, true};
}

double radius(const Record& entity) {
  const double found = entity.required(40);
  if (found < 0)
    throw entity.fault("radius " + number(found) + " is negative",
                       "radii are 0 or more; save the drawing again");
  return found;
}

Outline on_plane(const Record& entity, const Sweep& sweep) {
  const Outline out = round(entity.point(10).head<2>(), radius(entity), sweep);
  return {placed(out.pieces, own_axes(entity)), out.closed};
}

Outline outline(const Vec2& centre, const Vec2& major, const Vec2& minor, const Sweep& sweep) {
  const EllipticArc arc{centre, major, minor, sweep.from, sweep.turn};
  const bool closed = sweep.turn >= 2 * kPi;
  const Vec2 from = arc.at(arc.start), to = closed ? from : arc.at(arc.start + arc.turn);
  const std::vector<Bezier> pieces = quadratic_pieces(arc, from, to);
  return {{pieces.begin(), pieces.end()}, closed};
}

}  // namespace

Outline line_outline(const Record& entity) {
  const Vec3 from = entity.point(10), to = entity.point(11);
  ensure_level(entity, from.z(), to.z(), (to - from).norm());
  return {{line(from.head<2>(), to.head<2>())}, false};
}

Outline arc_outline(const Record& entity) {
  return on_plane(entity, sweep(radians(entity.required(50)), radians(entity.required(51))));
}

Outline circle_outline(const Record& entity) { return on_plane(entity, {0, 2 * kPi}); }

// Centre and axes are those of the world; only the sense of the second axis hangs on the extrusion.
Outline ellipse_outline(const Record& entity) {
  const Vec3 centre = entity.point(10), axis = entity.point(11);
  ensure_level(entity, axis.z(), 0, axis.norm());
  const double ratio = entity.required(40);
  if (ratio == 0 || std::abs(ratio) > 1e6)
    throw entity.fault("the ratio of its axes is " + number(ratio), "it must not be 0; draw a line instead");
  const Vec2 major = axis.head<2>();
  const double side = (seen_from_below(entity) ? -1 : 1) * (ratio < 0 ? -1 : 1);
  const Vec2 minor = std::abs(ratio) * side * left_of(major);
  const Sweep swept = sweep(entity.number(41, 0), entity.number(42, 2 * kPi));
  if (std::abs(std::abs(ratio) - 1) > kRound) return outline(centre.head<2>(), major, minor, swept);
  const Outline circular = round({0, 0}, major.norm(), swept);
  const Affine turn = affine(major.normalized(), side * left_of(major.normalized()));
  return {placed(circular.pieces, moved(centre.head<2>()) * turn), circular.closed};
}

}  // namespace lamwright::dxf_reading
