#include "exporters/scene/forms.hpp"

#include <cmath>

#include "shared/units.hpp"

namespace lamwright::scene {
namespace {

Vec2 left_at(const Segment& s, double share) { return left_of(s.tangent(share)); }

// To the left of a segment.
Segment beside(const Segment& s, double by) {
  const Vec2 from = s.from + by * left_at(s, 0), to = s.to + by * left_at(s, 1);
  if (s.straight()) return line(from, to);
  return {from, to, s.turn, s.centre, s.radius - (s.turn > 0 ? by : -by)};
}

double angle(const Vec2& from, const Vec2& to) { return std::atan2(cross(from, to), from.dot(to)); }

// The same line or circle between other points of it.
Segment between(const Segment& s, const Vec2& from, const Vec2& to) {
  if (s.straight()) return line(from, to);
  const double turn =
      s.turn - angle(s.from - s.centre, from - s.centre) + angle(s.to - s.centre, to - s.centre);
  return {from, to, turn, s.centre, s.radius};
}

// Parallels part at a corner that turns right: an arc about it joins them. Where it hardly turns they meet on
// its bisector, which lies on both within rounding.
std::vector<Segment> parallel(const std::vector<Segment>& path, double by) {
  constexpr double kHardly = 0.02;  // radians
  std::vector<Segment> out;
  for (const Segment& s : path) {
    Segment next = beside(s, by);
    if (!out.empty()) {
      const Vec2 before = (out.back().to - s.from) / by, after = left_at(s, 0);
      if (const double turn = angle(before, after); turn < -kHardly) {
        out.push_back({out.back().to, next.from, turn, s.from, by});
      } else {
        const Vec2 meet = s.from + by * (before + after) / (1 + before.dot(after));
        out.back() = between(out.back(), out.back().from, meet);
        next = between(next, meet, next.to);
      }
    }
    out.push_back(next);
  }
  return out;
}

void append(Mesh& to, const Mesh& more) {
  const auto base = std::uint32_t(to.points.size());
  to.points.insert(to.points.end(), more.points.begin(), more.points.end());
  to.normals.insert(to.normals.end(), more.normals.begin(), more.normals.end());
  for (const auto& t : more.triangles) to.triangles.push_back({t[0] + base, t[1] + base, t[2] + base});
  for (const auto& e : more.edges) to.edges.push_back({e[0] + base, e[1] + base});
}

// Y climbs along Z; normals stay square to the faces.
Mesh sheared(Mesh mesh, double slope) {
  for (Vec3& p : mesh.points) p.y() += slope * p.z();
  for (Vec3& n : mesh.normals) n = Vec3(n.x(), n.y(), n.z() - slope * n.y()).normalized();
  return mesh;
}

// Two legs and the side above them.
Outline arch(double inner, double up, double thickness) {
  const double outer = inner + thickness;
  return polygon({{-outer, 0},
                  {-inner, 0},
                  {-inner, up},
                  {inner, up},
                  {inner, 0},
                  {outer, 0},
                  {outer, up + thickness},
                  {-outer, up + thickness}},
                 "loop");
}

}  // namespace

Outline band(const std::vector<Segment>& path, double thickness, const std::string& name) {
  const std::vector<Segment> outer = parallel(path, thickness);
  std::vector<Segment> loop = path;
  loop.push_back(line(path.back().to, outer.back().to));
  for (auto s = outer.rbegin(); s != outer.rend(); ++s) loop.push_back(s->reversed());
  loop.push_back(line(outer.front().from, path.front().from));
  return {std::move(loop), name};
}

Mesh round_bar(double diameter, double length) {
  const double r = diameter / 2;
  const Vec2 right{r, 0}, left{-r, 0};
  return extruded(Outline({{right, left, kPi, {0, 0}, r}, {left, right, kPi, {0, 0}, r}}, "round bar"),
                  length);
}

Mesh ring(const RingSpec& spec) {
  const double inner = spec.across / 2, outer = inner + spec.thickness;
  Mesh out;
  if (spec.open) {
    out = extruded(rectangle({-outer, 0}, {-inner, spec.up}), spec.width);
    append(out, extruded(rectangle({inner, 0}, {outer, spec.up}), spec.width));
  } else {
    out = extruded(arch(inner, spec.up, spec.thickness), spec.width);
    append(out, extruded(rectangle({-outer, -spec.thickness}, {outer, 0}), spec.width));
  }
  return spec.slope == 0 ? out : sheared(std::move(out), spec.slope);
}

}  // namespace lamwright::scene
