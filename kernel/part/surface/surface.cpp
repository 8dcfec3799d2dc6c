#include "kernel/part/surface/surface.hpp"

#include <cstring>

namespace lamwright::surface {

std::size_t Surface::Hash::operator()(const Key& key) const {
  std::uint64_t hash = 0;
  for (const double value : key) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &value, sizeof bits);
    hash = (hash ^ bits) * 0x9e3779b97f4a7c15u;
    hash ^= hash >> 29;
  }
  return std::size_t(hash);
}

std::uint32_t Surface::point(const Vec3& at, const Vec3& normal) {
  Key key{at.x(), at.y(), at.z(), normal.x(), normal.y(), normal.z()};
  for (double& value : key) value += 0.0;  // -0 becomes 0, which has other bits
  const auto [held, fresh] = held_.try_emplace(key, std::uint32_t(mesh_.points.size()));
  if (fresh) {
    mesh_.points.push_back(sheet_.point(at));
    mesh_.normals.push_back(sheet_.vector(normal));
  }
  return held->second;
}

void Surface::triangles(const std::vector<Triangle>& all, const std::vector<std::uint32_t>& corners) {
  for (const Triangle& t : all) triangle(corners[t[0]], corners[t[1]], corners[t[2]]);
}

}  // namespace lamwright::surface
