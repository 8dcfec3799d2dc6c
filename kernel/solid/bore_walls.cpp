#include "kernel/solid/bore_walls.hpp"

#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>

#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

struct Step {  // a stretch of one radius
  double radius, from, to;
};

std::vector<Step> steps_of(const Bore& bore, double length) {
  if (!bore.counterbore) return {{bore.diameter / 2, 0, length}};
  return {{bore.counterbore->diameter / 2, 0, bore.counterbore->depth},
          {bore.diameter / 2, bore.counterbore->depth, length}};
}

struct Wall {
  TopoDS_Edge foot, head;
  TopoDS_Face face;
};

Wall wall_of(const Step& step, const StraightBore& bore) {
  const Round round{{bore.mouth + step.from * bore.axis, bore.along, cross3(bore.axis, bore.along)},
                    step.radius};
  const double height = step.to - step.from;
  const Vec3 start = round.frame.point({step.radius, 0, 0});
  const TopoDS_Vertex low = vertex_at(start, kSolid), high = vertex_at(start + height * bore.axis, kSolid);
  const TopoDS_Edge foot = arc_edge(round, 0, 2 * kPi, low, low, kSolid);
  const TopoDS_Edge head = arc_edge(round, height, 2 * kPi, high, high, kSolid);
  const TopoDS_Edge seam = line_edge(low, high, kSolid);
  return {foot, head, cylinder_face(round, height, 2 * kPi, {foot, head, seam, seam}, true)};
}

Loop around(const TopoDS_Edge& rim) { return {rim}; }
Loop against(const TopoDS_Edge& rim) { return {TopoDS::Edge(rim.Reversed())}; }

std::optional<StraightBore> across(const Part& part, const Bore& bore) {
  const Frame& sheet = part.sheet();
  const bool from_near = bore.enters == kNearFace;
  Vec3 at = sheet.local_point(bore.at);
  at.z() = from_near ? 0 : part.thickness();
  return StraightBore{sheet.point(at), from_near ? sheet.z() : Vec3(-sheet.z()), sheet.x,
                      bore.depth.value_or(part.thickness())};
}

std::optional<StraightBore> along(const Part& part, const Bore& bore) {
  const Frame& sheet = part.sheet();
  const Segment& entered = part.outline().segments()[bore.enters];
  const Vec2 edge = entered.tangent(0), inward = left_of(edge);
  const Vec3 given = sheet.local_point(bore.at);
  const Vec2 at = entered.from + (given.head<2>() - entered.from).dot(edge) * edge;
  double length = bore.length;
  if (!bore.depth) {
    const Segment& left = part.outline().segments()[bore.leaves];
    if (std::abs(left.tangent(0).dot(inward)) * bore.diameter > kSolid / 2) return std::nullopt;
    length = (left.from - at).dot(inward);
  }
  return StraightBore{sheet.point({at.x(), at.y(), given.z()}), sheet.vector({inward.x(), inward.y(), 0}),
                      sheet.z(), length};
}

}  // namespace

std::optional<StraightBore> straightened(const Part& part, const Bore& bore) {
  if (!bore.flat_mouth) return std::nullopt;
  return bore.enters < 0 ? across(part, bore) : along(part, bore);
}

BoreFaces bore_faces(const Bore& bore, const StraightBore& straight) {
  BoreFaces out;
  std::optional<TopoDS_Edge> before;  // end of the wider stretch
  for (const Step& step : steps_of(bore, straight.length)) {
    const Wall wall = wall_of(step, straight);
    if (!before) out.mouth = around(wall.foot);
    if (before)
      out.faces.push_back(plane_face(straight.mouth + step.from * straight.axis, -straight.axis,
                                     straight.along, {against(*before), around(wall.foot)}));
    out.faces.push_back(wall.face);
    before = wall.head;
  }
  if (bore.depth)
    out.faces.push_back(plane_face(straight.mouth + straight.length * straight.axis, -straight.axis,
                                   straight.along, {against(*before)}));
  else
    out.exit = against(*before);
  return out;
}

int faces_of(const Bore& bore) { return 1 + (bore.counterbore ? 2 : 0) + (bore.depth ? 1 : 0); }

}  // namespace lamwright
