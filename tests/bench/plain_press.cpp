#include "tests/bench/plain_press.hpp"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <GProp_GProps.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS_Shape.hxx>
#include <algorithm>
#include <cmath>

namespace lamwright::bench {
namespace {

gp_Pnt point(const Vec3& p) { return {p.x(), p.y(), p.z()}; }
gp_Pnt point(const Part& part, const Vec2& p) { return point(part.sheet().point({p.x(), p.y(), 0})); }

TopoDS_Edge edge(const Part& part, const Segment& s) {
  const gp_Pnt from = point(part, s.from), to = point(part, s.to);
  if (s.straight()) return BRepBuilderAPI_MakeEdge(from, to);
  return BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(from, point(part, s.point(0.5)), to).Value());
}

TopoDS_Shape extruded(const Part& part) {
  BRepBuilderAPI_MakeWire wire;
  for (const Segment& s : part.outline().segments()) wire.Add(edge(part, s));
  const Vec3 through = part.thickness() * part.sheet().z();
  return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire()).Face(),
                               gp_Vec(through.x(), through.y(), through.z()))
      .Shape();
}

// A rod that begins 1 outside the wood; one that leaves it reaches 1 beyond.
TopoDS_Shape rod(const BoreSpec& bore, double diameter, double depth) {
  const Vec3 begin = bore.at - bore.axis;
  return BRepPrimAPI_MakeCylinder(gp_Ax2(point(begin), gp_Dir(bore.axis.x(), bore.axis.y(), bore.axis.z())),
                                  diameter / 2, depth + 1)
      .Shape();
}

TopoDS_Shape plain(const Part& part) {
  TopTools_ListOfShape wood, tools;
  wood.Append(extruded(part));
  for (const Bore& bore : part.bores()) {
    tools.Append(rod(bore, bore.diameter, bore.depth ? *bore.depth : bore.length + 1));
    if (bore.counterbore) tools.Append(rod(bore, bore.counterbore->diameter, bore.counterbore->depth));
  }
  if (tools.IsEmpty()) return wood.First();
  BRepAlgoAPI_Cut cut;
  cut.SetArguments(wood);
  cut.SetTools(tools);
  cut.Build();
  return cut.Shape();
}

// To 1e-9: without a bound, wide arcs in an outline cost six digits.
double volume(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties, 1e-9);
  return properties.Mass();
}

bool former_or_beam(const Part& part) {
  return part.kind() == PartKind::former_lower || part.kind() == PartKind::beam;
}

}  // namespace

PlainPress plain_press(const PressPlan& plan) {
  PlainPress out;
  for (const Body& body : plan.bodies)
    if (former_or_beam(plan.parts[body.part])) out[body.part].emplace_back(plain(plan.parts[body.part]));
  return out;
}

// Pieces of one part are made alike, so one of them is measured.
bool same_volumes(const PlainPress& press, const PressPlan& plan) {
  return std::all_of(press.begin(), press.end(), [&](const auto& made) {
    const double right = plan.parts[made.first].volume();
    return std::abs(volume(made.second.front().shape()) - right) < 1e-8 * right;
  });
}

}  // namespace lamwright::bench
