#include "kernel/reading/dxf/placed.hpp"

#include <cmath>

#include "kernel/profile/drawn/elliptic.hpp"

namespace lamwright::dxf_reading {
namespace {

// Products of factors that were meant to be equal differ by some steps of a double.
constexpr double kEven = 1e-12;

bool even(const Eigen::Matrix2d& m) {
  const Vec2 x = m.col(0), y = m.col(1);
  const double size = x.squaredNorm() + y.squaredNorm();
  return std::abs(x.squaredNorm() - y.squaredNorm()) <= kEven * size && std::abs(x.dot(y)) <= kEven * size;
}

Bezier mapped(Bezier curve, const Affine& map) {
  for (Vec2& pole : curve.poles) pole = map(pole);
  return curve;
}

Segment mapped_evenly(const Segment& s, const Affine& map) {
  if (s.straight()) return line(map(s.from), map(s.to));
  return {map(s.from), map(s.to), map.spread() < 0 ? -s.turn : s.turn, map(s.centre),
          s.radius * map.linear.col(0).norm()};
}

std::vector<Bezier> mapped_unevenly(const Segment& arc, const Affine& map) {
  const Vec2 out = arc.from - arc.centre;
  return quadratic_pieces(under(map, {arc.centre, out, left_of(out), 0, arc.turn}), map(arc.from),
                          map(arc.to));
}

}  // namespace

std::vector<DrawnPiece> placed(const std::vector<DrawnPiece>& pieces, const Affine& map) {
  const bool evenly = even(map.linear);
  std::vector<DrawnPiece> out;
  for (const DrawnPiece& piece : pieces) {
    const auto* segment = std::get_if<Segment>(&piece);
    if (!segment)
      out.emplace_back(mapped(std::get<Bezier>(piece), map));
    else if (evenly || segment->straight())
      out.emplace_back(mapped_evenly(*segment, map));
    else
      for (Bezier& part : mapped_unevenly(*segment, map)) out.emplace_back(std::move(part));
  }
  return out;
}

}  // namespace lamwright::dxf_reading
