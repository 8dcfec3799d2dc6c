#include "kernel/solid/sides.hpp"

#include <BRep_Builder.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <algorithm>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// The cylinder of an arc. Its angle grows anticlockwise, so a clockwise arc is taken from its end.
Round round_of(const Part& part, const Segment& arc) {
  const Vec2 start = arc.turn > 0 ? arc.from : arc.to;
  const Vec2 x = (start - arc.centre).normalized();
  const Vec2 y = left_of(x);
  const Frame& sheet = part.sheet();
  return {{sheet.point({arc.centre.x(), arc.centre.y(), 0}), sheet.vector({x.x(), x.y(), 0}),
           sheet.vector({y.x(), y.y(), 0})},
          arc.radius};
}

// How far the circle's own ends lie from the corners: outlines join within kSamePoint, and tolerances must
// cover it.
double gap_at_ends(const Segment& s) {
  if (s.straight()) return 0;
  const Vec2 start = s.turn > 0 ? s.from : s.to, end = s.turn > 0 ? s.to : s.from;
  const double from = std::atan2(start.y() - s.centre.y(), start.x() - s.centre.x());
  return std::max(std::abs((start - s.centre).norm() - s.radius),
                  (s.centre + s.radius * direction(from + std::abs(s.turn)) - end).norm());
}

double tolerance_of(const Part& part) {
  double gap = 0;
  for (const Segment& s : part.outline().segments()) gap = std::max(gap, gap_at_ends(s));
  return gap < kSolid / 2 ? kSolid : 2 * gap;
}

TopoDS_Edge rail(const Part& part, const Segment& s, double w, const TopoDS_Vertex& from,
                 const TopoDS_Vertex& to, double tolerance) {
  if (s.straight()) return line_edge(from, to, tolerance);
  if (s.turn > 0) return arc_edge(round_of(part, s), w, s.turn, from, to, tolerance);
  return TopoDS::Edge(arc_edge(round_of(part, s), w, -s.turn, to, from, tolerance).Reversed());
}

std::vector<Loop> with_outer(Loop outer, const std::vector<Loop>& mouths) {
  std::vector<Loop> loops{std::move(outer)};
  loops.insert(loops.end(), mouths.begin(), mouths.end());
  return loops;
}

Loop reversed(const Loop& loop) {
  Loop back;
  for (auto edge = loop.rbegin(); edge != loop.rend(); ++edge) back.push_back(TopoDS::Edge(edge->Reversed()));
  return back;
}

}  // namespace

SideEdges side_edges(const Part& part) {
  const auto& segments = part.outline().segments();
  const double tolerance = tolerance_of(part);
  const double thickness = part.thickness();
  std::vector<TopoDS_Vertex> low, high;
  SideEdges edges;
  for (const Segment& s : segments) {
    low.push_back(vertex_at(part.sheet().point({s.from.x(), s.from.y(), 0}), tolerance));
    high.push_back(vertex_at(part.sheet().point({s.from.x(), s.from.y(), thickness}), tolerance));
    edges.up.push_back(line_edge(low.back(), high.back(), tolerance));
  }
  for (std::size_t i = 0; i < segments.size(); ++i) {
    const std::size_t next = (i + 1) % segments.size();
    edges.near.push_back(rail(part, segments[i], 0, low[i], low[next], tolerance));
    edges.far.push_back(rail(part, segments[i], thickness, high[i], high[next], tolerance));
  }
  return edges;
}

TopoDS_Face side_face(const Part& part, const SideEdges& edges, std::size_t i,
                      const std::vector<Loop>& mouths) {
  const Segment& s = part.outline().segments()[i];
  const TopoDS_Edge &here = edges.up[i], &next = edges.up[(i + 1) % edges.up.size()];
  const bool crown = s.turn > 0;
  if (!s.straight())
    return cylinder_face(round_of(part, s), part.thickness(), std::abs(s.turn),
                         {edges.near[i], edges.far[i], crown ? here : next, crown ? next : here}, !crown);
  const Vec2 along = s.tangent(0);
  const Vec2 outward = -left_of(along);
  const Loop outer{edges.near[i], next, TopoDS::Edge(edges.far[i].Reversed()), TopoDS::Edge(here.Reversed())};
  return plane_face(part.sheet().point({s.from.x(), s.from.y(), 0}),
                    part.sheet().vector({outward.x(), outward.y(), 0}),
                    part.sheet().vector({along.x(), along.y(), 0}), with_outer(outer, mouths));
}

TopoDS_Face near_face(const Part& part, const SideEdges& edges, const std::vector<Loop>& mouths) {
  const Frame& sheet = part.sheet();
  return plane_face(sheet.origin, -sheet.z(), sheet.x, with_outer(reversed(edges.near), mouths));
}

TopoDS_Face far_face(const Part& part, const SideEdges& edges, const std::vector<Loop>& mouths) {
  const Frame& sheet = part.sheet();
  return plane_face(sheet.origin + part.thickness() * sheet.z(), sheet.z(), sheet.x,
                    with_outer(edges.far, mouths));
}

}  // namespace lamwright
