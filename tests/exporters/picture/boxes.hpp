// Scenes of plain boxes.
#pragma once
#include <vector>

#include "exporters/picture/picture.hpp"

namespace lamwright::test {

// From the origin to `size`, each face with points of its own.
inline Mesh box_mesh(const Vec3& size) {
  Mesh mesh;
  const auto face = [&](const Vec3& from, const Vec3& along, const Vec3& up) {
    const auto first = std::uint32_t(mesh.points.size());
    for (const Vec3& p : {from, Vec3(from + along), Vec3(from + along + up), Vec3(from + up)}) {
      mesh.points.push_back(p);
      mesh.normals.push_back(cross3(along, up).normalized());
    }
    mesh.triangles.push_back({first, first + 1, first + 2});
    mesh.triangles.push_back({first, first + 2, first + 3});
    for (std::uint32_t i = 0; i < 4; ++i) mesh.edges.push_back({first + i, first + (i + 1) % 4});
  };
  const Vec3 x{size.x(), 0, 0}, y{0, size.y(), 0}, z{0, 0, size.z()}, none{0, 0, 0};
  face(none, y, x);
  face(z, x, y);
  face(none, z, y);
  face(x, y, z);
  face(none, x, z);
  face(y, z, x);
  return mesh;
}

struct BoxPiece {
  Vec3 from{0, 0, 0}, size{1, 1, 1};
  scene::Kind kind = scene::Kind::former;
  Vec3 opens{0, 0, 0};
};

inline scene::Scene box_scene(const std::vector<BoxPiece>& boxes) {
  scene::Scene out;
  for (const BoxPiece& box : boxes) {
    out.shapes.push_back({"box", "", box_mesh(box.size)});
    out.pieces.push_back(
        {"box", out.shapes.size() - 1, {box.from, {1, 0, 0}, {0, 1, 0}}, box.kind, box.opens});
  }
  return out;
}

struct Pixel {
  int r = 0, g = 0, b = 0;
  bool white() const { return r == 255 && g == 255 && b == 255; }
  int sum() const { return r + g + b; }
  bool operator==(const Pixel&) const = default;
};
inline Pixel pixel(const picture::Image& image, int x, int y) {
  const std::size_t at = 3 * (std::size_t(y) * std::size_t(image.width) + std::size_t(x));
  return {image.rgb[at], image.rgb[at + 1], image.rgb[at + 2]};
}

// Of all that is not white: columns and rows of its first and last pixels.
struct Drawn {
  int left = 1 << 20, top = 1 << 20, right = -1, bottom = -1;
};
inline Drawn drawn_part(const picture::Image& image) {
  Drawn out;
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x) {
      if (pixel(image, x, y).white()) continue;
      out = {std::min(out.left, x), std::min(out.top, y), std::max(out.right, x), std::max(out.bottom, y)};
    }
  return out;
}

}  // namespace lamwright::test
