#include "kernel/solid/measure.hpp"

#include <BOPAlgo_ArgumentAnalyzer.hxx>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepTools.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <ShapeAnalysis_ShapeTolerance.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>

#include "kernel/solid/guarded.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

Vec3 vec(const gp_XYZ& p) { return {p.X(), p.Y(), p.Z()}; }

bool only_lines_and_circles(const TopoDS_Shape& shape) {
  for (TopExp_Explorer at(shape, TopAbs_EDGE); at.More(); at.Next()) {
    const GeomAbs_CurveType type = BRepAdaptor_Curve(TopoDS::Edge(at.Current())).GetType();
    if (type != GeomAbs_Line && type != GeomAbs_Circle) return false;
  }
  return true;
}

// The plain integration is exact between lines and circles but off by 1e-7 where a pilot's mouth bounds a
// face; the adaptive one is right there, and slow.
GProp_GProps properties_of(const Solid& solid) {
  return guarded("measuring a solid", [&] {
    GProp_GProps properties;
    if (only_lines_and_circles(solid.shape()))
      BRepGProp::VolumeProperties(solid.shape(), properties);
    else
      BRepGProp::VolumeProperties(solid.shape(), properties, 1e-9);
    return properties;
  });
}

int number_of(const Solid& solid, TopAbs_ShapeEnum type) {
  TopTools_IndexedMapOfShape found;
  TopExp::MapShapes(solid.shape(), type, found);
  return found.Extent();
}

int free_edges(const Solid& solid) {
  TopTools_IndexedDataMapOfShapeListOfShape faces;
  TopExp::MapShapesAndAncestors(solid.shape(), TopAbs_EDGE, TopAbs_FACE, faces);
  int free = 0;
  for (int i = 1; i <= faces.Extent(); ++i) {
    const TopoDS_Edge& edge = TopoDS::Edge(faces.FindKey(i));
    const bool seam = BRep_Tool::IsClosed(edge, TopoDS::Face(faces(i).First()));
    if (faces(i).Extent() < 2 && !seam && !BRep_Tool::Degenerated(edge)) ++free;
  }
  return free;
}

CylinderFace cylinder_of(const TopoDS_Face& face, const BRepAdaptor_Surface& surface) {
  double u0 = 0, u1 = 0, v0 = 0, v1 = 0;
  BRepTools::UVBounds(face, u0, u1, v0, v1);
  const gp_Cylinder cylinder = surface.Cylinder();
  const Vec3 direction = vec(cylinder.Axis().Direction().XYZ());
  CylinderFace out;
  out.point = vec(cylinder.Location().XYZ()) + v0 * direction;
  out.direction = direction;
  out.radius = cylinder.Radius();
  out.length = v1 - v0;
  out.full = u1 - u0 > 2 * kPi - 1e-9;
  out.hollow = (face.Orientation() == TopAbs_REVERSED) == cylinder.Direct();
  return out;
}

}  // namespace

double solid_volume(const Solid& solid) { return properties_of(solid).Mass(); }

Vec3 solid_centre(const Solid& solid) { return vec(properties_of(solid).CentreOfMass().XYZ()); }

Part::Box solid_box(const Solid& solid) {
  return guarded("box of a solid", [&] {
    Bnd_Box box;
    BRepBndLib::AddOptimal(solid.shape(), box, false, false);
    return Part::Box{vec(box.CornerMin().XYZ()), vec(box.CornerMax().XYZ())};
  });
}

ShapeCounts shape_counts(const Solid& solid) {
  return guarded("counting the faces of a solid", [&] {
    ShapeCounts counts;
    counts.solids = number_of(solid, TopAbs_SOLID);
    counts.shells = number_of(solid, TopAbs_SHELL);
    counts.edges = number_of(solid, TopAbs_EDGE);
    counts.free_edges = free_edges(solid);
    for (TopExp_Explorer at(solid.shape(), TopAbs_FACE); at.More(); at.Next()) {
      const GeomAbs_SurfaceType type = BRepAdaptor_Surface(TopoDS::Face(at.Current()), false).GetType();
      (type == GeomAbs_Plane      ? counts.planes
       : type == GeomAbs_Cylinder ? counts.cylinders
                                  : counts.other_faces)++;
    }
    return counts;
  });
}

std::vector<CylinderFace> cylinder_faces(const Solid& solid) {
  return guarded("listing the cylinders of a solid", [&] {
    std::vector<CylinderFace> found;
    for (TopExp_Explorer at(solid.shape(), TopAbs_FACE); at.More(); at.Next()) {
      const TopoDS_Face& face = TopoDS::Face(at.Current());
      const BRepAdaptor_Surface surface(face, false);
      if (surface.GetType() == GeomAbs_Cylinder) found.push_back(cylinder_of(face, surface));
    }
    return found;
  });
}

double greatest_tolerance(const Solid& solid) {
  return guarded("tolerance of a solid",
                 [&] { return ShapeAnalysis_ShapeTolerance().Tolerance(solid.shape(), 1); });
}

bool is_valid(const Solid& solid) {
  return guarded("checking a solid", [&] { return bool(BRepCheck_Analyzer(solid.shape()).IsValid()); });
}

bool meets_itself(const Solid& solid) {
  return guarded("looking for faces that meet", [&] {
    BOPAlgo_ArgumentAnalyzer analyzer;
    analyzer.SetShape1(solid.shape());
    analyzer.SelfInterMode() = true;
    analyzer.SmallEdgeMode() = true;
    analyzer.Perform();
    return bool(analyzer.HasFaulty());
  });
}

}  // namespace lamwright
