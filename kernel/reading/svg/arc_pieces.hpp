// Elliptic arcs as drawn pieces.
#pragma once
#include <vector>

#include "kernel/profile/drawn/elliptic.hpp"

namespace lamwright::svg_reading {

// But for 1e-6 of the radius: editors write radii with the seven digits of single precision.
bool circular(const EllipticArc& arc);

// Of a circle its radius, else a bound that no half axis exceeds and the greatest exceeds 0.7 of.
double reach(const EllipticArc& arc);

// The arc from one end to the other, which may lie off it by rounding and are kept to the last bit:
// segments, each less than a full turn, when it is circular, else rational curves of at most 90 degrees. In
// mm; the radius is not tiny.
std::vector<DrawnPiece> pieces(const EllipticArc& arc, const Vec2& from, const Vec2& to);

// The circular arc between two ends that turns about the point on their bisector nearest to `centre`. `turn`
// holds when both lie on its circle within 1e-9 mm, else only its sign does.
Segment arc_between(const Vec2& from, const Vec2& to, const Vec2& centre, double turn);

}  // namespace lamwright::svg_reading
