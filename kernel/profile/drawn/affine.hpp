// Affine maps of the plane.
#pragma once
#include "kernel/profile/vector.hpp"

namespace lamwright {

// p -> linear p + shift.
struct Affine {
  Eigen::Matrix2d linear = Eigen::Matrix2d::Identity();
  Vec2 shift{0, 0};

  Vec2 operator()(const Vec2& p) const { return linear * p + shift; }
  bool finite() const { return linear.allFinite() && shift.allFinite(); }
  double spread() const { return cross(linear.col(0), linear.col(1)); }  // areas grow by this; < 0 mirrors
  // Puts the plane on a line or a point, but for rounding.
  bool flattens() const { return std::abs(spread()) <= 1e-12 * linear.col(0).norm() * linear.col(1).norm(); }
};

// First the inner, then the outer.
inline Affine operator*(const Affine& outer, const Affine& inner) {
  return {outer.linear * inner.linear, outer(inner.shift)};
}

inline Affine moved(const Vec2& by) { return {Eigen::Matrix2d::Identity(), by}; }

// The images of (1, 0), (0, 1) and (0, 0) less that of (0, 0), which is `shift`.
inline Affine affine(const Vec2& x, const Vec2& y, const Vec2& shift = {0, 0}) {
  Affine out{{}, shift};
  out.linear << x, y;
  return out;
}

inline Affine scaled(double x, double y) { return affine({x, 0}, {0, y}); }
inline Affine turned(double angle) { return affine(direction(angle), left_of(direction(angle))); }
inline Affine mirrored() { return scaled(-1, 1); }  // x -> -x

}  // namespace lamwright
