#include <algorithm>

#include "kernel/part/surface/faces.hpp"

namespace lamwright::surface {
namespace {

struct Loops {
  std::vector<std::vector<Vec2>> flat;
  std::vector<Vec2> all;

  void add(std::vector<Vec2> loop) {
    all.insert(all.end(), loop.begin(), loop.end());
    flat.push_back(std::move(loop));
  }
};

// Anticlockwise as seen against the cutter's axis, which is clockwise seen from the other side.
std::vector<Vec2> mouth_in_face(const Bored& bore, const std::vector<Vec3>& ring) {
  std::vector<Vec2> loop;
  for (const Vec3& p : ring) loop.push_back(p.head<2>());
  if (bore.cutter.axis.z() < 0) std::reverse(loop.begin(), loop.end());
  return loop;
}

Loops loops_of(const Rails& rails, const std::vector<Bored>& bores, int face) {
  Loops loops;
  std::vector<Vec2> outer;
  for (int i = 0; i < rails.count(); ++i) outer.push_back(rails[i].at);
  loops.add(std::move(outer));
  for (const Bored& bore : bores) {
    if (bore.cutter.enters == face) loops.add(mouth_in_face(bore, bore.first));
    if (bore.cutter.leaves == face) loops.add(mouth_in_face(bore, bore.last));
  }
  return loops;
}

void add_flat(Surface& surface, const Loops& loops, double w, bool up) {
  std::vector<std::uint32_t> corners;
  for (const Vec2& p : loops.all)
    corners.push_back(surface.point({p.x(), p.y(), w}, {0, 0, up ? 1.0 : -1.0}));
  std::vector<Triangle> all = triangulate(loops.flat);
  if (!up)
    for (Triangle& t : all) std::swap(t[1], t[2]);
  surface.triangles(all, corners);
}

}  // namespace

void add_flats(Surface& surface, const Rails& rails, double thickness, const std::vector<Bored>& bores) {
  add_flat(surface, loops_of(rails, bores, kNearFace), 0, false);
  add_flat(surface, loops_of(rails, bores, kFarFace), thickness, true);
}

}  // namespace lamwright::surface
