#include "kernel/part/mesh.hpp"

#include "kernel/part/surface/faces.hpp"

namespace lamwright {
namespace {

using namespace surface;

struct Body {
  const Outline& outline;
  double thickness;
  Frame sheet;
  std::string name;
  std::vector<Cutter> cutters;
};

std::vector<OnChord> all_ends(const Body& body, const Rails& rails) {
  std::vector<OnChord> out;
  for (const Cutter& cutter : body.cutters)
    for (const auto& mouth : {entry_mouth(cutter), exit_mouth(cutter)}) {
      if (!mouth) continue;
      const std::vector<OnChord> both = ends(*mouth, rails, body.name);
      out.insert(out.end(), both.begin(), both.end());
    }
  return out;
}

Mesh meshed(const Body& body, const MeshSpec& wanted) {
  const MeshSpec spec = close_enough(wanted, body.outline);
  const Rails plain(body.outline, spec);
  const Rails rails = plain.with(all_ends(body, plain));
  std::vector<Bored> bores;
  for (const Cutter& cutter : body.cutters) bores.push_back(bored(cutter, rails, spec, body.name));
  Surface surface(body.sheet);
  add_flats(surface, rails, body.thickness, bores);
  add_side(surface, rails, body.thickness, bores);
  for (std::size_t i = 0; i < bores.size(); ++i) {
    add_wall(surface, bores[i]);
    const bool goes_on = i + 1 < bores.size() && bores[i + 1].cutter.from > 0;
    if (bores[i].cutter.leaves == kNoFace) add_floor(surface, bores[i], goes_on ? &bores[i + 1] : nullptr);
  }
  return std::move(surface).mesh();
}

}  // namespace

Mesh mesh_of(const Part& part, const MeshSpec& spec) {
  std::vector<Cutter> cutters;
  for (const Bore& bore : part.bores())
    for (const Cutter& cutter : cutters_of(part, bore)) cutters.push_back(cutter);
  return meshed({part.outline(), part.thickness(), part.sheet(), part.name(), std::move(cutters)}, spec);
}

Mesh extruded(const Outline& outline, double thickness, const MeshSpec& spec) {
  return meshed({outline, thickness, {}, "extruded outline", {}}, spec);
}

double Mesh::volume() const {
  double six = 0;
  if (points.empty()) return 0;
  const Vec3 base = points.front();  // terms about a point of the surface do not cancel for far-off parts
  for (const auto& t : triangles)
    six += (points[t[0]] - base).dot(cross3(points[t[1]] - base, points[t[2]] - base));
  return six / 6;
}

}  // namespace lamwright
