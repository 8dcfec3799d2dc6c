#include "exporters/scene/gathering.hpp"

#include <algorithm>
#include <tuple>

namespace lamwright::scene {
namespace {

bool same(const Shape& a, const Shape& b) {
  return a.name == b.name && a.stock == b.stock && a.mesh.points == b.mesh.points &&
         a.mesh.triangles == b.mesh.triangles;
}

std::string two_digits(int n) { return (n < 10 ? "0" : "") + std::to_string(n); }

}  // namespace

Gathering::Gathering(const std::vector<Part>& parts) {
  for (const Part& part : parts) scene_.shapes.push_back({part.name(), part.stock(), mesh_of(part)});
}

std::size_t Gathering::index_of(Shape shape) {
  const auto known = std::find_if(scene_.shapes.begin(), scene_.shapes.end(),
                                  [&](const Shape& other) { return same(other, shape); });
  const auto index = std::size_t(known - scene_.shapes.begin());
  if (known == scene_.shapes.end()) scene_.shapes.push_back(std::move(shape));
  return index;
}

void Gathering::add_counted(const Shape& shape, const Frame& placed, Kind kind, const Vec3& opens) {
  add({shape.name + "-" + two_digits(++counts_[shape.name]), index_of(shape), placed, kind, opens});
}

Scene Gathering::finished() const {
  Scene out = scene_;
  std::stable_sort(out.pieces.begin(), out.pieces.end(), [](const Piece& a, const Piece& b) {
    return std::tie(a.kind, a.name) < std::tie(b.kind, b.name);
  });
  return out;
}

}  // namespace lamwright::scene
