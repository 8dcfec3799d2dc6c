#include "kernel/reading/svg/arc_pieces.hpp"

#include <algorithm>
#include <cmath>

#include "shared/units.hpp"

namespace lamwright::svg_reading {
namespace {

constexpr double kOnCircle = 1e-9;    // mm
constexpr double kNearlyFull = 0.01;  // radians short of a full turn, where the chord leads nowhere

std::vector<DrawnPiece> circle_pieces(const EllipticArc& arc, const Vec2& from, const Vec2& to) {
  const int count = std::abs(arc.turn) > 2 * kPi - kNearlyFull ? 2 : 1;
  const double step = arc.turn / count, side = cross(arc.u, arc.v) < 0 ? -1 : 1;
  std::vector<DrawnPiece> out;
  Vec2 at = from;
  for (int i = 0; i < count; ++i) {
    const Vec2 end = i + 1 == count ? to : arc.at(arc.start + (i + 1) * step);
    out.push_back(arc_between(at, end, arc.centre, side * step));
    at = end;
  }
  return out;
}

}  // namespace

bool circular(const EllipticArc& arc) {
  constexpr double kDigits = 1e-6;
  const double square = arc.u.squaredNorm();
  return std::abs(arc.u.norm() - arc.v.norm()) <= kDigits * arc.u.norm() &&
         std::abs(arc.u.dot(arc.v)) <= kDigits * square;
}

double reach(const EllipticArc& arc) {
  return circular(arc) ? std::sqrt(std::abs(cross(arc.u, arc.v))) : std::hypot(arc.u.norm(), arc.v.norm());
}

std::vector<DrawnPiece> pieces(const EllipticArc& arc, const Vec2& from, const Vec2& to) {
  if (circular(arc)) return circle_pieces(arc, from, to);
  const std::vector<Bezier> curves = quadratic_pieces(arc, from, to);
  return {curves.begin(), curves.end()};
}

Segment arc_between(const Vec2& from, const Vec2& to, const Vec2& centre, double turn) {
  const double first = (from - centre).norm(), last = (to - centre).norm();
  if (std::abs(first - last) <= kOnCircle) return {from, to, turn, centre, first};
  const Vec2 chord = to - from, middle = (from + to) / 2, along = chord.normalized();
  const Vec2 nearest = centre + along.dot(middle - centre) * along;
  // To the left of the chord an anticlockwise arc is less than half a turn.
  const double side = turn < 0 ? -1 : 1;
  const double left = side * cross(along, nearest - middle);
  return {from, to, side * 2 * std::atan2(chord.norm() / 2, left), nearest, (from - nearest).norm()};
}

}  // namespace lamwright::svg_reading
