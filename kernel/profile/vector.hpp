// Plane and space vectors, in mm.
#pragma once
#include <Eigen/Core>
#include <cmath>

namespace lamwright {

using Vec2 = Eigen::Vector2d;
using Vec3 = Eigen::Vector3d;

// z component of the cross product: positive when b lies to the left of a.
inline double cross(const Vec2& a, const Vec2& b) { return a.x() * b.y() - a.y() * b.x(); }
// a turned by a quarter turn to the left.
inline Vec2 left_of(const Vec2& a) { return {-a.y(), a.x()}; }
// Unit vector at an angle (radians, anticlockwise from X).
inline Vec2 direction(double angle) { return {std::cos(angle), std::sin(angle)}; }

struct Box2 {
  Vec2 low{INFINITY, INFINITY};
  Vec2 high{-INFINITY, -INFINITY};
  void add(const Vec2& p) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  void add(const Box2& b) {
    low = low.cwiseMin(b.low);
    high = high.cwiseMax(b.high);
  }
  Vec2 size() const { return high - low; }
};

}  // namespace lamwright
