// Plane and space vectors, in mm.
#pragma once
#include <Eigen/Core>
#include <cmath>

namespace lamwright {

using Vec2 = Eigen::Vector2d;  // mm, or unit where it is a direction
using Vec3 = Eigen::Vector3d;  // the same in space

// z component of the cross product: positive when b lies to the left of a.
inline double cross(const Vec2& a, const Vec2& b) { return a.x() * b.y() - a.y() * b.x(); }
// a turned by a quarter turn to the left.
inline Vec2 left_of(const Vec2& a) { return {-a.y(), a.x()}; }
// Unit vector at an angle (radians, anticlockwise from X).
inline Vec2 direction(double angle) { return {std::cos(angle), std::sin(angle)}; }

// An upright rectangle. Empty, with low above high, until a point is added.
struct Box2 {
  Vec2 low{INFINITY, INFINITY};     // lower left corner
  Vec2 high{-INFINITY, -INFINITY};  // upper right corner
  // Grown until it holds the point.
  void add(const Vec2& p) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  // Grown until it holds the other box; an empty one adds nothing.
  void add(const Box2& b) {
    low = low.cwiseMin(b.low);
    high = high.cwiseMax(b.high);
  }
  Vec2 size() const { return high - low; }  // width and height; not finite while empty
};

}  // namespace lamwright
