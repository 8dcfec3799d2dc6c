#include "kernel/reading/svg/elliptic_arc.hpp"

#include <algorithm>
#include <cmath>

#include "shared/units.hpp"

namespace lamwright::svg_reading {

std::optional<EllipticArc> elliptic_arc(const EndpointArc& stated) {
  double rx = std::abs(stated.rx), ry = std::abs(stated.ry);
  if (rx == 0 || ry == 0 || stated.from == stated.to) return std::nullopt;
  const Vec2 axis = direction(radians(std::fmod(stated.axis_deg, 360)));

  // Half the chord, backwards, where the ellipse is the unit circle about the origin of its axes.
  const Vec2 half = (stated.from - stated.to) / 2;
  Vec2 p{axis.dot(half) / rx, cross(axis, half) / ry};
  const double reach = p.norm();
  if (reach == 0) return std::nullopt;
  if (reach > 1) {
    rx *= reach;
    ry *= reach;
    p /= reach;
  }
  const double share = std::min(reach, 1.0);
  // From the middle of the chord at right angles to it.
  const double away = std::sqrt((1 - share) * (1 + share)) / share;
  const Vec2 centre = (stated.large == stated.sweep ? -away : away) * Vec2(p.y(), -p.x());

  EllipticArc out;
  out.u = rx * axis;
  out.v = ry * left_of(axis);
  out.centre = (stated.from + stated.to) / 2 + centre.x() * out.u + centre.y() * out.v;
  const Vec2 first = p - centre;
  out.start = std::atan2(first.y(), first.x());
  const double least = 2 * std::asin(share);
  out.turn = (stated.sweep ? 1 : -1) * (stated.large ? 2 * kPi - least : least);
  return out;
}

}  // namespace lamwright::svg_reading
