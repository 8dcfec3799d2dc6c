// What the modelling kernel does where the builder relies on it or guards against it. A new release that
// changes one of these shows here first.
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBndLib.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRep_Builder.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Standard_DomainError.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Compound.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>

#include "kernel/part/bores.hpp"
#include "kernel/solid/bore_walls.hpp"
#include "kernel/solid/measure.hpp"
#include "kernel/solid/sides.hpp"
#include "tests/kernel/solid/sample_parts.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return properties.Mass();
}

TopoDS_Shape board_shape() { return BRepPrimAPI_MakeBox(1200, 120, 18).Shape(); }

TopoDS_Shape rod(double radius, double from, double to) {
  return BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(600, 60, from), gp_Dir(0, 0, 1)), radius, to - from).Shape();
}

TopoDS_Shape cut(const TopoDS_Shape& shape, std::initializer_list<TopoDS_Shape> tools) {
  TopTools_ListOfShape arguments, list;
  arguments.Append(shape);
  for (const TopoDS_Shape& tool : tools) list.Append(tool);
  BRepAlgoAPI_Cut operation;
  operation.SetArguments(arguments);
  operation.SetTools(list);
  operation.Build();
  REQUIRE(operation.IsDone());
  REQUIRE_FALSE(operation.HasErrors());
  return operation.Shape();
}

TopoDS_Compound compound_of(std::initializer_list<TopoDS_Shape> shapes) {
  BRep_Builder builder;
  TopoDS_Compound compound;
  builder.MakeCompound(compound);
  for (const TopoDS_Shape& shape : shapes) builder.Add(compound, shape);
  return compound;
}

int solids_in(const TopoDS_Shape& shape) {
  int count = 0;
  for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next()) ++count;
  return count;
}

// A plate whose two bores overlap, joined on purpose: make_part refuses it.
Solid plate_with_crossing_bores() {
  const Part plate = make_part(spec_of("plate", PartKind::spacer_block, rectangle({0, 0}, {100, 100}), 40));
  PartSpec spec = spec_of("plate", PartKind::spacer_block, rectangle({0, 0}, {100, 100}), 40);
  const Bore down = resolve_bore(spec, {BoreUse::clamp, 20, {}, {}, {50, 50, 0}, {0, 0, 1}});
  const Bore along = resolve_bore(spec, {BoreUse::strap, 10, {}, {}, {0, 50, 20}, {1, 0, 0}});
  const BoreFaces a = bore_faces(down, *straightened(plate, down)),
                  b = bore_faces(along, *straightened(plate, along));
  const SideEdges edges = side_edges(plate);
  std::vector<TopoDS_Face> faces{near_face(plate, edges, {a.mouth}), far_face(plate, edges, {a.exit})};
  for (int i = 0; i < 4; ++i) {
    std::vector<Loop> mouths;
    if (i == along.enters) mouths.push_back(b.mouth);
    if (i == along.leaves) mouths.push_back(b.exit);
    faces.push_back(side_face(plate, edges, std::size_t(i), mouths));
  }
  faces.push_back(a.faces.front());
  faces.push_back(b.faces.front());
  BRep_Builder builder;
  TopoDS_Shell shell;
  builder.MakeShell(shell);
  for (const TopoDS_Face& face : faces) builder.Add(shell, face);
  TopoDS_Solid solid;
  builder.MakeSolid(solid);
  builder.Add(solid, shell);
  return Solid(solid);
}

}  // namespace

TEST_CASE("tools that overlap are cut rightly from a list and wrongly, without an error, from one compound",
          "[occt]") {
  const TopoDS_Shape bore = rod(5, -1, 19), counterbore = rod(10, 12, 19);
  const double right = 2592000 - 900 * kPi;
  CHECK(volume_of(cut(board_shape(), {bore, counterbore})) == within(right, 1e-3));
  CHECK(volume_of(cut(board_shape(), {compound_of({bore, counterbore})})) > right + 1000);
}

TEST_CASE("a cut that removes everything reports success and leaves no solid", "[occt]") {
  CHECK(solids_in(cut(board_shape(), {BRepPrimAPI_MakeBox(gp_Pnt(-1, -1, -1), 1202, 122, 20).Shape()})) == 0);
}

TEST_CASE("a cut that misses reports success and changes nothing", "[occt]") {
  const TopoDS_Shape outside =
      BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(600, 300, -1), gp_Dir(0, 0, 1)), 5, 20).Shape();
  CHECK(volume_of(cut(board_shape(), {outside})) == within(2592000, 1e-6));
}

TEST_CASE("the validity check does not see bores that cross, the search for meeting faces does", "[occt]") {
  const Solid solid = plate_with_crossing_bores();
  CHECK(is_valid(solid));
  CHECK(meets_itself(solid));
}

TEST_CASE("the plain bounding box is larger by the tolerance, the optimal one exact", "[occt]") {
  Bnd_Box plain;
  BRepBndLib::Add(board_shape(), plain, false);
  CHECK(plain.CornerMin().X() == within(-1e-7, 1e-12));
  const Part::Box exact = solid_box(Solid(board_shape()));
  CHECK(same(exact.low, {0, 0, 0}, 1e-12));
  CHECK(same(exact.high, {1200, 120, 18}, 1e-12));
}

TEST_CASE("a shape cannot be placed by a mirrored location", "[occt]") {
  gp_Trsf mirror;
  mirror.SetMirror(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(1, 0, 0)));
  CHECK_THROWS_AS(board_shape().Located(TopLoc_Location(mirror)), Standard_DomainError);
}

TEST_CASE("the plain integration errs where a pilot's mouth bounds a face, the adaptive one does not",
          "[occt]") {
  const Part part = former();
  const Solid solid = build_solid(part);
  CHECK(std::abs(volume_of(solid.shape()) - part.volume()) > 1e-9 * part.volume());
  CHECK(solid_volume(solid) == within(part.volume(), 4e-12 * part.volume()));
}
