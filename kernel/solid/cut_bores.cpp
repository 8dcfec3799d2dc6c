#include "kernel/solid/cut_bores.hpp"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrim_Cylinder.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Solid.hxx>

#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

struct Tools {
  TopTools_ListOfShape solids;
  std::vector<TopoDS_Face> walls;
};

// From `before` outside the mouth to `depth`. A mouth in an edge of radius R begins at most R - sqrt(R^2 -
// r^2) < r outside its middle, so starting a diameter outside clears it and touches nothing else.
void add_tool(Tools& tools, const Bore& bore, double diameter, double depth) {
  const Vec3 foot = bore.at - diameter * bore.axis;
  const gp_Ax2 axes(gp_Pnt(foot.x(), foot.y(), foot.z()),
                    gp_Dir(bore.axis.x(), bore.axis.y(), bore.axis.z()));
  BRepPrimAPI_MakeCylinder cylinder(axes, diameter / 2, depth + diameter);
  tools.solids.Append(cylinder.Solid());
  tools.walls.push_back(cylinder.Cylinder().LateralFace());
}

Tools tools_of(const std::vector<const Bore*>& bores) {
  Tools tools;
  for (const Bore* bore : bores) {
    const double past = bore->depth ? 0 : bore->diameter;
    add_tool(tools, *bore, bore->diameter, bore->length + past);
    if (bore->counterbore) add_tool(tools, *bore, bore->counterbore->diameter, bore->counterbore->depth);
  }
  return tools;
}

[[noreturn]] void refuse(const std::string& part, const std::string& problem) {
  throw Error(ErrorKind::internal, Place{{}, 0, 0, part}, problem, "please report it with the job file");
}

TopoDS_Solid only_solid(const TopoDS_Shape& result, const std::string& part) {
  TopoDS_Solid solid;
  int count = 0;
  for (TopExp_Explorer at(result, TopAbs_SOLID); at.More(); at.Next(), ++count)
    solid = TopoDS::Solid(at.Current());
  if (count != 1) refuse(part, "cutting the pilots left " + counted(count, "solid") + " instead of one");
  return solid;
}

}  // namespace

TopoDS_Solid with_cut_bores(const TopoDS_Solid& solid, const std::vector<const Bore*>& bores,
                            const std::string& part) {
  if (bores.empty()) return solid;
  const Tools tools = tools_of(bores);
  TopTools_ListOfShape arguments;
  arguments.Append(solid);
  BRepAlgoAPI_Cut cut;
  cut.SetArguments(arguments);
  cut.SetTools(tools.solids);
  cut.SetNonDestructive(true);
  cut.SetRunParallel(false);  // the order of the result must not depend on threads
  cut.Build();
  if (!cut.IsDone() || cut.HasErrors())
    refuse(part, "cutting " + counted(long(bores.size()), "pilot") + " failed");
  for (const TopoDS_Face& wall : tools.walls)
    if (cut.Modified(wall).Extent() != 1)
      refuse(part, "the wall of a pilot came out as " + counted(cut.Modified(wall).Extent(), "face") +
                       " instead of one");
  return only_solid(cut.Shape(), part);
}

}  // namespace lamwright
