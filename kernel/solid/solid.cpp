#include "kernel/solid/solid.hpp"

#include <BRepBuilderAPI_Transform.hxx>
#include <BRep_Builder.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>
#include <map>

#include "kernel/solid/bore_walls.hpp"
#include "kernel/solid/cut_bores.hpp"
#include "kernel/solid/guarded.hpp"
#include "kernel/solid/rules.hpp"
#include "kernel/solid/sides.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

// The bores of a part, joined or left to be cut.
struct Joined {
  std::vector<TopoDS_Face> faces;
  std::map<int, std::vector<Loop>> mouths;  // by the face they open in
  std::vector<const Bore*> to_cut;
};

Joined join_bores(const Part& part) {
  Joined joined;
  for (const Bore& bore : part.bores()) {
    const std::optional<StraightBore> straight = straightened(part, bore);
    if (!straight) {
      joined.to_cut.push_back(&bore);
      continue;
    }
    const BoreFaces made = bore_faces(bore, *straight);
    joined.faces.insert(joined.faces.end(), made.faces.begin(), made.faces.end());
    joined.mouths[bore.enters].push_back(made.mouth);
    if (!made.exit.empty()) joined.mouths[bore.leaves].push_back(made.exit);
  }
  return joined;
}

// Bore walls first, flat faces last: the STEP writer looks at the whole face in which it first meets an edge,
// so that rims met first in a face of 640 mouths would cost 2000 ms instead of 300.
std::vector<TopoDS_Face> all_faces(const Part& part, Joined& joined) {
  const SideEdges edges = side_edges(part);
  std::vector<TopoDS_Face> faces = joined.faces;
  for (std::size_t i = 0; i < edges.up.size(); ++i)
    faces.push_back(side_face(part, edges, i, joined.mouths[int(i)]));
  faces.push_back(near_face(part, edges, joined.mouths[kNearFace]));
  faces.push_back(far_face(part, edges, joined.mouths[kFarFace]));
  return faces;
}

TopoDS_Solid solid_of(const std::vector<TopoDS_Face>& faces) {
  BRep_Builder builder;
  TopoDS_Shell shell;
  builder.MakeShell(shell);
  for (const TopoDS_Face& face : faces) builder.Add(shell, face);
  shell.Closed(true);
  TopoDS_Solid solid;
  builder.MakeSolid(solid);
  builder.Add(solid, shell);
  return solid;
}

Expected expected_of(const Part& part, bool cut) {
  int faces = 2 + int(part.outline().segments().size());
  for (const Bore& bore : part.bores()) faces += faces_of(bore);
  return {faces, cut};
}

std::string operation(const Part& part) {
  return "solid of " + part.name() + " (" + counted(long(part.outline().segments().size()), "edge") + ", " +
         counted(long(part.bores().size()), "bore") + ")";
}

}  // namespace

Solid::Solid(const TopoDS_Shape& shape) : shape_(std::make_shared<const TopoDS_Shape>(shape)) {}

Solid Solid::moved(const Vec3& by) const {
  return guarded("moving a solid", [&] {
    gp_Trsf move;
    move.SetTranslation(gp_Vec(by.x(), by.y(), by.z()));
    return Solid(BRepBuilderAPI_Transform(*shape_, move, true).Shape());
  });
}

Solid build_solid(const Part& part) {
  return guarded(operation(part), [&] {
    Joined joined = join_bores(part);
    const TopoDS_Solid joined_solid = solid_of(all_faces(part, joined));
    const TopoDS_Solid solid = with_cut_bores(joined_solid, joined.to_cut, part.name());
    check_solid(solid, part, expected_of(part, !joined.to_cut.empty()));
    return Solid(solid);
  });
}

}  // namespace lamwright
