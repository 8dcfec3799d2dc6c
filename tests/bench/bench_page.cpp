// The job sheet and its 3D press at growing numbers of formers, piece by piece.
#include "exporters/gltf/glb.hpp"
#include "exporters/html/html_exporter.hpp"
#include "exporters/picture/picture.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "tests/bench/bench.hpp"
#include "tests/bench/desk_job.hpp"

namespace lamwright::bench {
namespace {

std::vector<std::string> row(int formers) {
  Registry registry;
  add_press_methods(registry);
  Progress progress;
  const Evaluation result = evaluate(desk_job(formers), "job.toml", MemorySources(), registry, progress);
  ensure(result.plan.has_value(), "the job of the bench can be pressed");
  const ExportInput input{*result.job, *result.plan, result.findings, progress, result.figures};
  scene::Scene scene;
  std::string press;
  CountingSink sink;
  const double meshes = fastest(5, [&] { scene = scene::scene_of(*result.plan); });
  const double gltf = fastest(5, [&] { press = glb(scene, "desk"); });
  const double still = fastest(5, [&] { picture::png(picture::render(scene, {}, 1200, 800)); });
  HtmlExporter().write(input, sink);
  const double page = fastest(3, [&] {
    CountingSink again;
    HtmlExporter().write(input, again);
  });
  std::size_t triangles = 0;
  for (const scene::Piece& piece : scene.pieces) triangles += scene.shapes[piece.shape].mesh.triangles.size();
  return {std::to_string(formers),
          std::to_string(scene.pieces.size()),
          std::to_string(scene.shapes.size()),
          std::to_string(triangles),
          number(meshes, 1),
          number(gltf, 1),
          number(double(press.size()) / 1e6, 2),
          number(still, 1),
          number(page, 1),
          number(double(sink.size()) / 1e6, 2)};
}

}  // namespace

void bench_page() {
  std::vector<std::vector<std::string>> rows{{"formers", "pieces", "shapes", "triangles shown", "meshes ms",
                                              "glTF ms", "glTF MB", "picture ms", "page ms, all of it",
                                              "page MB"}};
  for (const int formers : {4, 8, 16, 32, 64}) rows.push_back(row(formers));
  print_table("The job sheet of the reading desk", rows);
}

}  // namespace lamwright::bench
