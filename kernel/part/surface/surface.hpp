// Points, triangles and lines of a mesh as they are gathered.
#pragma once
#include <array>
#include <unordered_map>
#include <vector>

#include "kernel/part/mesh.hpp"
#include "kernel/part/triangulate.hpp"

namespace lamwright::surface {

// Everything goes in in sheet coordinates and comes out in the part's own frame.
class Surface {
 public:
  explicit Surface(const Frame& sheet) : sheet_(sheet) {}

  // The point there with that normal: the one already held, when both are equal to the last bit.
  std::uint32_t point(const Vec3& at, const Vec3& normal);
  void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) { mesh_.triangles.push_back({a, b, c}); }
  void line(std::uint32_t a, std::uint32_t b) { mesh_.edges.push_back({a, b}); }
  // Triangles between points that are held already, numbered as `corners` numbers them.
  void triangles(const std::vector<Triangle>& all, const std::vector<std::uint32_t>& corners);

  Mesh mesh() && { return std::move(mesh_); }

 private:
  using Key = std::array<double, 6>;
  struct Hash {
    std::size_t operator()(const Key& key) const;
  };
  Frame sheet_;
  Mesh mesh_;
  std::unordered_map<Key, std::uint32_t, Hash> held_;
};

}  // namespace lamwright::surface
