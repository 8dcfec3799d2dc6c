// Arcs as paths state them, by their ends.
#pragma once
#include <optional>

#include "kernel/profile/drawn/elliptic.hpp"

namespace lamwright::svg_reading {

// As the A command of a path states it.
struct EndpointArc {
  Vec2 from{0, 0}, to{0, 0};
  double rx = 0, ry = 0;  // a sign is dropped
  double axis_deg = 0;    // from X to the axis of rx
  bool large = false;
  bool sweep = false;  // t grows
};

// Nothing when a radius is 0 or the ends fall together: that is no arc. Radii too small for the distance of
// the ends grow until they fit (SVG 2, B.2.4 and B.2.5).
std::optional<EllipticArc> elliptic_arc(const EndpointArc& stated);

}  // namespace lamwright::svg_reading
