#include "kernel/solid/rules.hpp"

#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Shape.hxx>
#include <vector>

#include "kernel/solid/joined_volume.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

[[noreturn]] void refuse(const Part& part, const std::string& problem) {
  throw Error(ErrorKind::internal, Place{{}, 0, 0, part.name()}, "the solid is wrong: " + problem,
              "please report it with the job file");
}

int count(const TopoDS_Shape& shape, TopAbs_ShapeEnum type) {
  int n = 0;
  for (TopExp_Explorer at(shape, type); at.More(); at.Next()) ++n;
  return n;
}

void check_shell(const TopoDS_Shape& solid, const Part& part) {
  const int solids = count(solid, TopAbs_SOLID), shells = count(solid, TopAbs_SHELL);
  if (solids != 1 || shells != 1)
    refuse(part, counted(solids, "solid") + " with " + counted(shells, "shell") + " instead of one with one");
}

// Once in each direction; a seam does both in one face.
void check_edges(const TopoDS_Shape& solid, const Part& part) {
  struct Uses {
    int forward = 0, backward = 0;
  };
  TopTools_IndexedMapOfShape edges;
  std::vector<Uses> uses;
  for (TopExp_Explorer at(solid, TopAbs_EDGE); at.More(); at.Next()) {
    const std::size_t i = std::size_t(edges.Add(at.Current())) - 1;
    if (i == uses.size()) uses.emplace_back();
    (at.Current().Orientation() == TopAbs_FORWARD ? uses[i].forward : uses[i].backward)++;
  }
  for (const Uses& use : uses)
    if (use.forward != 1 || use.backward != 1)
      refuse(part, "an edge is used " + counted(use.forward, "time") + " forward and " +
                       counted(use.backward, "time") + " backward instead of once each");
}

void check_faces(const TopoDS_Shape& solid, const Part& part, const Expected& expected) {
  const int faces = count(solid, TopAbs_FACE);
  if (expected.cut ? faces < expected.faces : faces != expected.faces)
    refuse(part, counted(faces, "face") + " instead of " + std::to_string(expected.faces));
}

// With the plain integration a pilot's mouth costs 1e-7 of a former's volume; adaptively it costs 1e-12.
double integrated_volume(const TopoDS_Shape& solid) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(solid, properties, 1e-9);
  return properties.Mass();
}

void check_volume(const TopoDS_Shape& solid, const Part& part, const Expected& expected) {
  const double volume = expected.cut ? integrated_volume(solid) : joined_volume(solid);
  const double share = expected.cut ? 1e-7 : 1e-9;
  if (!(std::abs(volume - part.volume()) <= share * part.volume()))
    refuse(part, "volume " + number(volume, 6) + " instead of " + number(part.volume(), 6));
}

}  // namespace

void check_solid(const TopoDS_Shape& solid, const Part& part, const Expected& expected) {
  check_shell(solid, part);
  check_edges(solid, part);
  check_faces(solid, part, expected);
  check_volume(solid, part, expected);
}

}  // namespace lamwright
