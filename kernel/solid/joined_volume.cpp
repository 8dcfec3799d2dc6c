#include "kernel/solid/joined_volume.hpp"

#include <BRep_Tool.hxx>
#include <Geom2d_Curve.hxx>
#include <Geom_Circle.hxx>
#include <Geom_CylindricalSurface.hxx>
#include <Geom_Line.hxx>
#include <Geom_Plane.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <algorithm>
#include <cmath>

#include "shared/error.hpp"

namespace lamwright {
namespace {

struct InPlane {
  gp_Ax3 axes;
  gp_XY of(const gp_Pnt& p) const {
    const gp_Vec from(axes.Location(), p);
    return {from.Dot(gp_Vec(axes.XDirection())), from.Dot(gp_Vec(axes.YDirection()))};
  }
};

// Twice the area between the edge and the plane's origin; for an arc its chord's triangle and its own cap.
double twice_area(const InPlane& plane, const TopoDS_Edge& edge) {
  double first = 0, last = 0;
  const Handle(Geom_Curve) curve = BRep_Tool::Curve(edge, first, last);
  const gp_XY a = plane.of(curve->Value(first)), b = plane.of(curve->Value(last));
  double twice = a.Crossed(b);
  if (const Handle(Geom_Circle) circle = Handle(Geom_Circle)::DownCast(curve); !circle.IsNull()) {
    const double sense = circle->Axis().Direction().Dot(plane.axes.Direction());
    const double sweep = last - first;
    twice += sense * circle->Radius() * circle->Radius() * (sweep - std::sin(sweep));
  } else {
    ensure(curve->IsKind(STANDARD_TYPE(Geom_Line)), "edges of a joined solid are lines and arcs");
  }
  return edge.Orientation() == TopAbs_REVERSED ? -twice : twice;
}

// Integral of x . n over the face, n the surface's own normal.
double plane_flux(const Geom_Plane& surface, const TopoDS_Face& face) {
  const InPlane plane{surface.Position()};
  double twice = 0;
  for (TopExp_Explorer at(face.Oriented(TopAbs_FORWARD), TopAbs_EDGE); at.More(); at.Next())
    twice += twice_area(plane, TopoDS::Edge(at.Current()));
  return gp_Vec(surface.Location().XYZ()).Dot(gp_Vec(surface.Axis().Direction())) * twice / 2;
}

double cylinder_flux(const Geom_CylindricalSurface& surface, const TopoDS_Face& face) {
  // Parameter curves of a joined solid are straight, so their ends hold the bounds.
  double u0 = INFINITY, u1 = -INFINITY, v0 = INFINITY, v1 = -INFINITY;
  for (TopExp_Explorer at(face, TopAbs_EDGE); at.More(); at.Next()) {
    double first = 0, last = 0;
    const Handle(Geom2d_Curve) curve =
        BRep_Tool::CurveOnSurface(TopoDS::Edge(at.Current()), face, first, last);
    for (const double t : {first, last}) {
      const gp_Pnt2d p = curve->Value(t);
      u0 = std::min(u0, p.X());
      u1 = std::max(u1, p.X());
      v0 = std::min(v0, p.Y());
      v1 = std::max(v1, p.Y());
    }
  }
  const gp_Ax3 axes = surface.Position();
  const gp_Vec centre(axes.Location().XYZ());
  const double toward = centre.Dot(gp_Vec(axes.XDirection())) * (std::sin(u1) - std::sin(u0)) -
                        centre.Dot(gp_Vec(axes.YDirection())) * (std::cos(u1) - std::cos(u0));
  return surface.Radius() * (v1 - v0) * (toward + surface.Radius() * (u1 - u0));
}

double flux(const TopoDS_Face& face) {
  const Handle(Geom_Surface) surface = BRep_Tool::Surface(face);
  const double sign = face.Orientation() == TopAbs_REVERSED ? -1 : 1;
  if (const Handle(Geom_Plane) plane = Handle(Geom_Plane)::DownCast(surface); !plane.IsNull())
    return sign * plane_flux(*plane, face);
  const Handle(Geom_CylindricalSurface) cylinder = Handle(Geom_CylindricalSurface)::DownCast(surface);
  ensure(!cylinder.IsNull(), "faces of a joined solid are planes and cylinders");
  return sign * cylinder_flux(*cylinder, face);
}

}  // namespace

double joined_volume(const TopoDS_Shape& solid) {
  double sum = 0;
  for (TopExp_Explorer at(solid, TopAbs_FACE); at.More(); at.Next()) sum += flux(TopoDS::Face(at.Current()));
  return sum / 3;
}

}  // namespace lamwright
