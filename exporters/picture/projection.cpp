#include "exporters/picture/projection.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::picture {

Axes axes_of(const Camera& camera) {
  const double ca = std::cos(camera.azimuth), sa = std::sin(camera.azimuth);
  const double ce = std::cos(camera.elevation), se = std::sin(camera.elevation);
  return {{ca, 0, -sa}, {-sa * se, ce, -ca * se}, {sa * ce, se, ca * ce}};
}

std::vector<Vec3> seen(const scene::Piece& piece, const Mesh& mesh, const Axes& axes, double open) {
  const Vec3 origin = piece.placed.origin + open * piece.opens;
  const Vec3 x = piece.placed.x, y = piece.placed.y, z = piece.placed.z();
  const auto along = [&](const Vec3& axis) { return Vec3{axis.dot(x), axis.dot(y), axis.dot(z)}; };
  const Vec3 right = along(axes.right), up = along(axes.up), toward = along(axes.toward);
  const Vec3 from{axes.right.dot(origin), axes.up.dot(origin), axes.toward.dot(origin)};
  std::vector<Vec3> out;
  out.reserve(mesh.points.size());
  for (const Vec3& p : mesh.points) out.push_back(from + Vec3{right.dot(p), up.dot(p), toward.dot(p)});
  return out;
}

Fit::Fit(const Box2& box, int width, int height, double margin)
    : middle_(width / 2.0, height / 2.0), centre_((box.low + box.high) / 2) {
  constexpr double kLeast = 1e-6;  // mm: a picture of one point
  const Vec2 size = box.size().cwiseMax(Vec2(kLeast, kLeast));
  scale_ = std::min((width - 2 * margin) / size.x(), (height - 2 * margin) / size.y());
}

}  // namespace lamwright::picture
