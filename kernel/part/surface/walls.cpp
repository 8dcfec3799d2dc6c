#include "kernel/part/surface/faces.hpp"

namespace lamwright::surface {
namespace {

std::vector<Vec2> circle_of(const Bored& bore) {
  std::vector<Vec2> out;
  for (const Vec2& unit : bore.units) out.push_back(bore.cutter.radius * unit);
  return out;
}

void add_loop(Surface& surface, const std::vector<std::uint32_t>& points) {
  for (std::size_t i = 0; i < points.size(); ++i) surface.line(points[i], points[(i + 1) % points.size()]);
}

}  // namespace

void add_wall(Surface& surface, const Bored& bore) {
  const std::size_t n = bore.units.size();
  std::vector<std::uint32_t> first, last;
  for (std::size_t i = 0; i < n; ++i) {
    first.push_back(surface.point(bore.first[i], -bore.outward(i)));
    last.push_back(surface.point(bore.last[i], -bore.outward(i)));
  }
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t next = (i + 1) % n;
    surface.triangle(first[i], first[next], last[next]);
    surface.triangle(first[i], last[next], last[i]);
  }
  add_loop(surface, first);
  add_loop(surface, last);
}

void add_floor(Surface& surface, const Bored& bore, const Bored* inner) {
  std::vector<std::vector<Vec2>> loops{circle_of(bore)};
  std::vector<std::uint32_t> corners;
  for (const Vec3& p : bore.last) corners.push_back(surface.point(p, -bore.cutter.axis));
  if (inner) {
    const std::vector<Vec2> hole = circle_of(*inner);
    loops.emplace_back(hole.rbegin(), hole.rend());
    for (auto p = inner->first.rbegin(); p != inner->first.rend(); ++p)
      corners.push_back(surface.point(*p, -bore.cutter.axis));
  }
  surface.triangles(triangulate(loops), corners);
}

}  // namespace lamwright::surface
