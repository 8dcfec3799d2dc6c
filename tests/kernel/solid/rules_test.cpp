// The rules that every solid is held against can fail, and say what is wrong.
#include "kernel/solid/rules.hpp"

#include <BRepPrimAPI_MakeBox.hxx>
#include <BRep_Builder.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Compound.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>

#include "kernel/solid/joined_volume.hpp"
#include "kernel/solid/solid.hpp"
#include "tests/kernel/solid/sample_parts.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const std::string kReport = "; please report it with the job file";

std::string refusal(const TopoDS_Shape& shape, const Part& part, const Expected& expected = {6, false}) {
  return message_of([&] { check_solid(shape, part, expected); });
}

TopoDS_Solid box_of(double x, double y, double z) { return BRepPrimAPI_MakeBox(x, y, z).Solid(); }

// The box's faces but the last, as a solid.
TopoDS_Solid open_box() {
  BRep_Builder builder;
  TopoDS_Shell shell;
  builder.MakeShell(shell);
  int faces = 0;
  for (TopExp_Explorer at(box_of(132, 70, 45), TopAbs_FACE); at.More() && faces < 5; at.Next(), ++faces)
    builder.Add(shell, at.Current());
  TopoDS_Solid solid;
  builder.MakeSolid(solid);
  builder.Add(solid, shell);
  return solid;
}

}  // namespace

TEST_CASE("a right solid passes the rules", "[solid]") {
  CHECK(refusal(box_of(132, 70, 45), spacer()).empty());
}

TEST_CASE("a solid of another volume is refused with both figures", "[solid]") {
  CHECK(refusal(box_of(132, 70, 45.001), spacer()) ==
        "spacer-block: the solid is wrong: volume 415809.24 instead of 415800" + kReport);
}

TEST_CASE("a solid turned inside out is refused", "[solid]") {
  CHECK(refusal(box_of(132, 70, 45).Reversed(), spacer()) ==
        "spacer-block: the solid is wrong: volume -415800 instead of 415800" + kReport);
}

TEST_CASE("a solid with another number of faces is refused", "[solid]") {
  CHECK(refusal(box_of(132, 70, 45), spacer(), {7, false}) ==
        "spacer-block: the solid is wrong: 6 faces instead of 7" + kReport);
  CHECK(refusal(box_of(132, 70, 45), spacer(), {5, true}).empty());
}

TEST_CASE("a shell with a hole is refused", "[solid]") {
  CHECK(refusal(open_box(), spacer(), {5, false}) ==
        "spacer-block: the solid is wrong: an edge is used 1 time forward and 0 times backward instead of "
        "once each" +
            kReport);
}

TEST_CASE("two solids or none are refused", "[solid]") {
  BRep_Builder builder;
  TopoDS_Compound compound;
  builder.MakeCompound(compound);
  CHECK(refusal(compound, spacer()) ==
        "spacer-block: the solid is wrong: 0 solids with 0 shells instead of one with one" + kReport);
  builder.Add(compound, box_of(1, 1, 1));
  builder.Add(compound, box_of(2, 2, 2));
  CHECK(refusal(compound, spacer()) ==
        "spacer-block: the solid is wrong: 2 solids with 2 shells instead of one with one" + kReport);
}

TEST_CASE("the volume from edges and surfaces is the closed form", "[solid]") {
  const std::vector<Part> parts{counterbored_board(), beam(), plain_former(waved_contact()),
                                panel(waved_contact(), 12, 300)};
  for (const Part& part : parts)
    CHECK(joined_volume(build_solid(part).shape()) == within(part.volume(), 1e-13 * 100 * part.volume()));
}
