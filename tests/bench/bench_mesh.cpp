// The surface of a beam with counterbored bores as triangles: from the part, and from its solid by
// OpenCASCADE.
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Poly_Triangulation.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Shape.hxx>

#include "kernel/part/mesh.hpp"
#include "kernel/solid/solid.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"

namespace lamwright::bench {
namespace {

constexpr double kPitch = 40, kDepth = 90, kWidth = 46;

Part beam_part(int bores) {
  PartSpec spec{"beam", PartKind::beam, "", rectangle({0, 0}, {kPitch * (bores + 1), kDepth}), kWidth, {}, {},
                {},     false};
  for (int i = 0; i < bores; ++i)
    spec.bores.push_back(
        {BoreUse::foot_screw, 6, {}, Counterbore{16, 50}, {kPitch * (i + 1), 0, kWidth / 2}, {0, 1, 0}});
  return make_part(spec);
}

// With the bounds that ours has for bores.
std::size_t triangles_of(const TopoDS_Shape& shape) {
  const MeshSpec spec;
  const BRepMesh_IncrementalMesh mesher(shape, spec.sag, false, spec.bore_turn, false);
  std::size_t count = 0;
  for (TopExp_Explorer face(shape, TopAbs_FACE); face.More(); face.Next()) {
    TopLoc_Location at;
    const auto triangulation = BRep_Tool::Triangulation(TopoDS::Face(face.Current()), at);
    if (!triangulation.IsNull()) count += std::size_t(triangulation->NbTriangles());
  }
  return count;
}

std::vector<std::string> row(int bores) {
  const Part part = beam_part(bores);
  Mesh mesh;
  std::size_t triangles = 0;
  const double ours = fastest(5, [&] { mesh = mesh_of(part); });
  const double solid = fastest(3, [&] { triangles = triangles_of(build_solid(part).shape()); });
  return {std::to_string(bores),
          number(ours, 2),
          std::to_string(mesh.triangles.size()),
          number(100 * (mesh.volume() / part.volume() - 1), 4),
          number(solid, 2),
          std::to_string(triangles),
          number(solid / ours, 1)};
}

}  // namespace

void bench_mesh() {
  std::vector<std::vector<std::string>> rows{{"bores", "from the part ms", "triangles", "volume off, percent",
                                              "from its solid ms", "triangles", "solid / part"}};
  for (const int bores : {10, 40, 160, 640}) rows.push_back(row(bores));
  print_table("A beam with counterbored bores as triangles; from its own description, from a solid", rows);
}

}  // namespace lamwright::bench
