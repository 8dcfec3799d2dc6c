#include "kernel/solid/faces.hpp"

#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Geom2d_Line.hxx>
#include <Geom_Circle.hxx>
#include <Geom_CylindricalSurface.hxx>
#include <Geom_Line.hxx>
#include <Geom_Plane.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <TopoDS_Wire.hxx>

#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

gp_Pnt pnt(const Vec3& v) { return {v.x(), v.y(), v.z()}; }
gp_Dir dir(const Vec3& v) { return {v.x(), v.y(), v.z()}; }

TopoDS_Edge edge_on(const Handle(Geom_Curve) & curve, double last, const TopoDS_Vertex& from,
                    const TopoDS_Vertex& to, double tolerance) {
  BRep_Builder builder;
  TopoDS_Edge edge;
  builder.MakeEdge(edge, curve, tolerance);
  builder.Add(edge, from.Oriented(TopAbs_FORWARD));
  builder.Add(edge, to.Oriented(TopAbs_REVERSED));
  builder.Range(edge, 0, last);
  return edge;
}

// `from` and `to` of the edge's own range, on a cylinder: u is the angle, v the height.
void put_on(const TopoDS_Edge& edge, const TopoDS_Face& face, const gp_Pnt2d& at, const gp_Dir2d& along) {
  BRep_Builder builder;
  double first = 0, last = 0;
  BRep_Tool::Range(edge, first, last);
  builder.UpdateEdge(edge, new Geom2d_Line(at, along), face, BRep_Tool::Tolerance(edge));
  builder.Range(edge, face, first, last);
}

// The seam lies on the face twice: at the full angle walked up, at angle 0 walked down.
void put_seam(const TopoDS_Edge& seam, const TopoDS_Face& face, double sweep) {
  BRep_Builder builder;
  double first = 0, last = 0;
  BRep_Tool::Range(seam, first, last);
  builder.UpdateEdge(seam, new Geom2d_Line(gp_Pnt2d(sweep, 0), gp_Dir2d(0, 1)),
                     new Geom2d_Line(gp_Pnt2d(0, 0), gp_Dir2d(0, 1)), face, BRep_Tool::Tolerance(seam));
  builder.Range(seam, face, first, last);
  builder.Continuity(seam, face, face, GeomAbs_CN);
}

TopoDS_Wire wire_of(const Loop& loop) {
  BRep_Builder builder;
  TopoDS_Wire wire;
  builder.MakeWire(wire);
  for (const TopoDS_Edge& edge : loop) builder.Add(wire, edge);
  wire.Closed(true);
  return wire;
}

TopoDS_Edge forward(const TopoDS_Edge& edge) { return TopoDS::Edge(edge.Oriented(TopAbs_FORWARD)); }
TopoDS_Edge backward(const TopoDS_Edge& edge) { return TopoDS::Edge(edge.Oriented(TopAbs_REVERSED)); }

}  // namespace

TopoDS_Vertex vertex_at(const Vec3& at, double tolerance) {
  TopoDS_Vertex vertex;
  BRep_Builder().MakeVertex(vertex, pnt(at), tolerance);
  return vertex;
}

TopoDS_Edge line_edge(const TopoDS_Vertex& from, const TopoDS_Vertex& to, double tolerance) {
  const gp_Pnt a = BRep_Tool::Pnt(from), b = BRep_Tool::Pnt(to);
  const double length = a.Distance(b);
  ensure(length > kSolid, "an edge has a length");
  return edge_on(new Geom_Line(a, gp_Dir(gp_Vec(a, b))), length, from, to, tolerance);
}

TopoDS_Edge arc_edge(const Round& round, double height, double sweep, const TopoDS_Vertex& from,
                     const TopoDS_Vertex& to, double tolerance) {
  const Vec3 centre = round.frame.origin + height * round.frame.z();
  const gp_Ax2 axes(pnt(centre), dir(round.frame.z()), dir(round.frame.x));
  return edge_on(new Geom_Circle(axes, round.radius), sweep, from, to, tolerance);
}

TopoDS_Face plane_face(const Vec3& at, const Vec3& outward, const Vec3& along,
                       const std::vector<Loop>& loops) {
  BRep_Builder builder;
  TopoDS_Face face;
  builder.MakeFace(face, new Geom_Plane(gp_Ax3(pnt(at), dir(outward), dir(along))), kSolid);
  for (const Loop& loop : loops) builder.Add(face, wire_of(loop));
  return face;
}

TopoDS_Face cylinder_face(const Round& round, double height, double sweep, const CylinderEdges& edges,
                          bool hollow) {
  BRep_Builder builder;
  TopoDS_Face face;
  const gp_Ax3 axes(pnt(round.frame.origin), dir(round.frame.z()), dir(round.frame.x));
  builder.MakeFace(face, new Geom_CylindricalSurface(axes, round.radius), kSolid);
  put_on(forward(edges.foot), face, {0, 0}, {1, 0});
  put_on(forward(edges.head), face, {0, height}, {1, 0});
  if (edges.start.IsSame(edges.end)) {
    put_seam(forward(edges.start), face, sweep);
  } else {
    put_on(forward(edges.start), face, {0, 0}, {0, 1});
    put_on(forward(edges.end), face, {sweep, 0}, {0, 1});
  }
  builder.Add(
      face, wire_of({forward(edges.foot), forward(edges.end), backward(edges.head), backward(edges.start)}));
  if (hollow) face.Reverse();
  return face;
}

}  // namespace lamwright
