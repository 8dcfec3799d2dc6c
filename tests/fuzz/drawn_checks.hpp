// What every curve keeps that a reader of drawings returns.
#pragma once
#include <cmath>

#include "kernel/profile/drawn/drawn.hpp"
#include "shared/error.hpp"

namespace lamwright::fuzz {

inline bool near_origin(const Vec2& p) { return p.array().abs().maxCoeff() <= 1e7 + 1; }

inline void check(const Segment& segment) {
  ensure(near_origin(segment.from) && near_origin(segment.to), "ends are finite and near");
  ensure(segment.from != segment.to, "a segment has a length");
  if (segment.straight()) return;
  ensure(std::abs(segment.turn) < 7 && std::isfinite(segment.turn), "an arc is less than a circle");
  ensure(segment.radius > 1e-4 && segment.radius < 2e9, "a radius is neither tiny nor enormous");
  // Rounding of coordinates as large as the radius, and what the turn of the last digit of an angle moves.
  const double slack = 1e-8 + 1e-13 * (segment.radius + segment.from.norm() + segment.to.norm());
  const double off = std::abs((segment.to - segment.centre).norm() - segment.radius);
  ensure(off <= slack, "an arc ends on its circle");
  ensure(std::abs((segment.from - segment.centre).norm() - segment.radius) <= slack,
         "an arc begins on its circle");
}

inline void check(const Bezier& bezier) {
  ensure(bezier.poles.size() >= 2, "a curve has a degree");
  for (const Vec2& pole : bezier.poles) ensure(near_origin(pole), "poles are finite and near");
  for (const double weight : bezier.weights) ensure(weight > 0 && weight <= 1, "weights are positive");
  ensure(bezier.weights.empty() || bezier.weights.size() == bezier.poles.size(), "a weight for each pole");
}

inline void check(const DrawnCurve& curve) {
  ensure(!curve.pieces.empty(), "a curve has pieces");
  for (const DrawnPiece& piece : curve.pieces) std::visit([](const auto& p) { check(p); }, piece);
  for (std::size_t i = 1; i < curve.pieces.size(); ++i)
    ensure(first_point(curve.pieces[i]) == last_point(curve.pieces[i - 1]), "pieces share their ends");
  ensure(!curve.closed || first_point(curve.pieces.front()) == last_point(curve.pieces.back()),
         "a closed curve ends where it begins");
}

}  // namespace lamwright::fuzz
