// A right-handed frame in space: where a part lies, or how a sheet lies in its part.
#pragma once
#include "kernel/profile/vector.hpp"

namespace lamwright {

// a x b, right-handed.
inline Vec3 cross3(const Vec3& a, const Vec3& b) {
  return {a.y() * b.z() - a.z() * b.y(), a.z() * b.x() - a.x() * b.z(), a.x() * b.y() - a.y() * b.x()};
}

// x and y are unit and square to each other; z follows, so a frame never mirrors.
struct Frame {
  Vec3 origin{0, 0, 0};  // mm
  Vec3 x{1, 0, 0};       // unit
  Vec3 y{0, 1, 0};       // unit, square to x

  Vec3 z() const { return cross3(x, y); }  // unit
  // Of a direction in this frame, outside.
  Vec3 vector(const Vec3& v) const { return v.x() * x + v.y() * y + v.z() * z(); }
  Vec3 point(const Vec3& p) const { return origin + vector(p); }  // of a point in this frame, outside
  // Of a direction outside, in this frame.
  Vec3 local_vector(const Vec3& v) const { return {v.dot(x), v.dot(y), v.dot(z())}; }
  // Of a point outside, in this frame.
  Vec3 local_point(const Vec3& p) const { return local_vector(p - origin); }
};

}  // namespace lamwright
