// Counterbored bores in a beam: faces joined, one Boolean call with every tool, one call for each bore.
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <GProp_GProps.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS_Shape.hxx>
#include <cmath>
#include <iostream>

#include "kernel/solid/solid.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"

namespace lamwright::bench {
namespace {

constexpr double kPitch = 40, kDepth = 90, kWidth = 46;
constexpr int kMostOneByOne = 160;

double length_of(int bores) { return kPitch * (bores + 1); }

Part beam_part(int bores) {
  PartSpec spec{"beam", PartKind::beam, "", rectangle({0, 0}, {length_of(bores), kDepth}), kWidth, {}, {},
                {},     false};
  for (int i = 0; i < bores; ++i)
    spec.bores.push_back(
        {BoreUse::foot_screw, 6, {}, Counterbore{16, 50}, {kPitch * (i + 1), 0, kWidth / 2}, {0, 1, 0}});
  return make_part(spec);
}

TopoDS_Shape rod(int bore, double radius, double depth) {
  const gp_Ax2 axes(gp_Pnt(kPitch * (bore + 1), -1, kWidth / 2), gp_Dir(0, 1, 0));
  return BRepPrimAPI_MakeCylinder(axes, radius, depth + 1).Shape();
}

void add_tools(TopTools_ListOfShape& tools, int bore) {
  tools.Append(rod(bore, 3, kDepth + 1));
  tools.Append(rod(bore, 8, 50));
}

TopoDS_Shape cut(const TopoDS_Shape& shape, const TopTools_ListOfShape& tools) {
  TopTools_ListOfShape arguments;
  arguments.Append(shape);
  BRepAlgoAPI_Cut operation;
  operation.SetArguments(arguments);
  operation.SetTools(tools);
  operation.Build();
  return operation.Shape();
}

TopoDS_Shape box(int bores) { return BRepPrimAPI_MakeBox(length_of(bores), kDepth, kWidth).Shape(); }

TopoDS_Shape cut_at_once(int bores) {
  TopTools_ListOfShape tools;
  for (int i = 0; i < bores; ++i) add_tools(tools, i);
  return cut(box(bores), tools);
}

TopoDS_Shape cut_one_by_one(int bores) {
  TopoDS_Shape shape = box(bores);
  for (int i = 0; i < bores; ++i) {
    TopTools_ListOfShape tools;
    add_tools(tools, i);
    shape = cut(shape, tools);
  }
  return shape;
}

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return properties.Mass();
}

// A way that gives another volume is not a way of doing the same.
std::string checked(double ms, const TopoDS_Shape& shape, const Part& part) {
  const bool same = std::abs(volume_of(shape) - part.volume()) < 1e-9 * part.volume();
  return number(ms, 2) + (same ? "" : " WRONG VOLUME");
}

std::vector<std::string> row(int bores) {
  const Part part = beam_part(bores);
  TopoDS_Shape joined, at_once, one_by_one;
  const double a = fastest(5, [&] { joined = build_solid(part).shape(); });
  const double b = fastest(bores > 100 ? 1 : 3, [&] { at_once = cut_at_once(bores); });
  std::vector<std::string> cells{
      std::to_string(bores), checked(a, joined, part), checked(b, at_once, part), "-", number(b / a, 0), "-"};
  if (bores > kMostOneByOne) return cells;
  const double c = fastest(1, [&] { one_by_one = cut_one_by_one(bores); });
  cells[3] = checked(c, one_by_one, part);
  cells[5] = number(c / a, 0);
  return cells;
}

}  // namespace

void bench_bores() {
  std::vector<std::vector<std::string>> rows{
      {"bores", "joined ms", "one call ms", "call per bore ms", "one call / joined", "per bore / joined"}};
  for (const int bores : {10, 40, 160, 640}) rows.push_back(row(bores));
  print_table("A beam with counterbored bores; joined with all its checks", rows);
}

}  // namespace lamwright::bench
