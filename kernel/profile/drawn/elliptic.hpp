// Arcs of ellipses.
#pragma once
#include <vector>

#include "kernel/profile/drawn/affine.hpp"
#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

// centre + cos(t) u + sin(t) v for t from start to start + turn, radians, |turn| <= 2 pi.
struct EllipticArc {
  Vec2 centre{0, 0};
  Vec2 u{1, 0}, v{0, 1};  // half axes or any other pair of conjugate ones
  double start = 0;
  double turn = 0;

  Vec2 at(double t, double away = 1) const { return centre + away * (std::cos(t) * u + std::sin(t) * v); }
};

EllipticArc under(const Affine& map, const EllipticArc& arc);

// Quadratic rational pieces of at most a quarter of a turn, without loss. The ends, which may lie off the arc
// by rounding, are kept to the last bit.
std::vector<Bezier> quadratic_pieces(const EllipticArc& arc, const Vec2& from, const Vec2& to);

}  // namespace lamwright
