#include "kernel/profile/drawn/elliptic.hpp"

#include <algorithm>
#include <cmath>

#include "shared/units.hpp"

namespace lamwright {

EllipticArc under(const Affine& map, const EllipticArc& arc) {
  return {map(arc.centre), map.linear * arc.u, map.linear * arc.v, arc.start, arc.turn};
}

std::vector<Bezier> quadratic_pieces(const EllipticArc& arc, const Vec2& from, const Vec2& to) {
  // The slack keeps a full turn at four pieces.
  const int count = std::max(1, int(std::ceil(std::abs(arc.turn) / (kPi / 2) - 1e-9)));
  const double step = arc.turn / count, weight = std::cos(step / 2);
  std::vector<Bezier> out;
  Vec2 at = from;
  for (int i = 0; i < count; ++i) {
    const double t = arc.start + i * step;
    const Vec2 end = i + 1 == count ? to : arc.at(t + step);
    out.push_back({{at, arc.at(t + step / 2, 1 / weight), end}, {1, weight, 1}});
    at = end;
  }
  return out;
}

}  // namespace lamwright
