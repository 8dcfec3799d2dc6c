// What holds for every mesh of a part, as numbers that tests compare.
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "kernel/part/mesh.hpp"
#include "shared/units.hpp"

namespace lamwright::test {

// Points at the same place as one: to the last bit, which is stricter than any distance.
inline std::vector<std::size_t> places(const Mesh& mesh) {
  std::map<std::array<double, 3>, std::size_t> seen;
  std::vector<std::size_t> out;
  for (const Vec3& p : mesh.points)
    out.push_back(seen.try_emplace({p.x(), p.y(), p.z()}, seen.size()).first->second);
  return out;
}

struct Topology {
  bool sound = true;      // as many normals as points, every index in range
  std::size_t loose = 0;  // directed edges that are not met by exactly one the other way
  long euler = 0;         // points - edges + faces
};
inline Topology topology(const Mesh& mesh) {
  Topology out;
  const auto in_range = [&](std::uint32_t i) { return i < mesh.points.size(); };
  out.sound = mesh.normals.size() == mesh.points.size() && !mesh.triangles.empty();
  for (const auto& t : mesh.triangles) out.sound = out.sound && std::all_of(t.begin(), t.end(), in_range);
  for (const auto& e : mesh.edges) out.sound = out.sound && std::all_of(e.begin(), e.end(), in_range);
  if (!out.sound) return out;
  const std::vector<std::size_t> at = places(mesh);
  std::map<std::pair<std::size_t, std::size_t>, int> directed;
  for (const auto& t : mesh.triangles)
    for (int i = 0; i < 3; ++i) ++directed[{at[t[i]], at[t[(i + 1) % 3]]}];
  for (const auto& [edge, count] : directed) {
    const auto back = directed.find({edge.second, edge.first});
    if (count != 1 || back == directed.end() || back->second != 1) ++out.loose;
  }
  const std::set<std::size_t> used(at.begin(), at.end());
  out.euler = long(used.size()) - long(directed.size() / 2) + long(mesh.triangles.size());
  return out;
}

// A sphere with a handle for each bore that goes through.
inline long expected_euler(const Part& part) {
  return 2 - 2 * std::count_if(part.bores().begin(), part.bores().end(),
                               [](const Bore& b) { return b.leaves != kNoFace; });
}

struct Facing {
  double unit = 0;       // greatest departure of a normal from length 1
  double least = 1;      // cosine between a triangle and the normals at its corners
  std::size_t seen = 0;  // triangles wide enough to face anywhere
};
inline Facing facing(const Mesh& mesh) {
  Facing out;
  for (const Vec3& n : mesh.normals) out.unit = std::max(out.unit, std::abs(n.norm() - 1));
  for (const auto& t : mesh.triangles) {
    const Vec3 u = mesh.points[t[1]] - mesh.points[t[0]], v = mesh.points[t[2]] - mesh.points[t[0]];
    const Vec3 twice = cross3(u, v);
    // Thinner ones face wherever the rounding of their corners turns them.
    if (twice.norm() < 1e-6 * std::max(u.norm(), v.norm())) continue;
    ++out.seen;
    for (const std::uint32_t i : t) out.least = std::min(out.least, twice.normalized().dot(mesh.normals[i]));
  }
  return out;
}

// By how much the volume of a mesh may differ from that of its part. A bore's wall has chords that turn by
// `turn` at most, so of its wood at least sin(turn) / turn is cut away; between an arc and a chord lie two
// thirds of their distance times the length, 0.7 where the arc turns by up to 1 radian; a mouth in an arc
// begins on the chord.
struct VolumeBound {
  double less = 0, more = 0;
};
inline VolumeBound volume_bound(const Part& part, const MeshSpec& spec = {}) {
  const double rounding = 1e-12 * part.volume();
  VolumeBound out{rounding, rounding};
  for (const Bore& bore : part.bores()) {
    out.more += bore.removed * (1 - std::sin(spec.bore_turn) / spec.bore_turn);
    if (bore.flat_mouth) continue;
    out.less += spec.sag * kPi * bore.diameter * bore.diameter / 4;
    out.more += spec.sag * kPi * bore.diameter * bore.diameter / 4;
  }
  for (const Segment& s : part.outline().segments())
    if (!s.straight()) (s.turn > 0 ? out.less : out.more) += 0.7 * spec.sag * s.length() * part.thickness();
  return out;
}

// Points of the wall of a bore: on its cylinder, with normals square to it.
struct WallPoints {
  std::size_t count = 0;
  double off = 0;             // greatest distance from the cylinder
  std::size_t intruding = 0;  // points of the mesh within the bore
};
inline WallPoints wall_points(const Mesh& mesh, const Bore& bore, double radius) {
  WallPoints out;
  for (std::size_t i = 0; i < mesh.points.size(); ++i) {
    const Vec3 from = mesh.points[i] - bore.at;
    const double depth = from.dot(bore.axis);
    const Vec3 radial = from - depth * bore.axis;
    const double away = radial.norm();
    if (depth > 1e-6 && depth < bore.length - 1e-6 && away < bore.diameter / 2 - 1e-7) ++out.intruding;
    if (std::abs(away - radius) > 1e-3 || (mesh.normals[i] + radial.normalized()).norm() > 1e-6) continue;
    if (depth < -2 * radius || depth > bore.length + 2 * radius) continue;
    ++out.count;
    out.off = std::max(out.off, std::abs(away - radius));
  }
  return out;
}

}  // namespace lamwright::test
