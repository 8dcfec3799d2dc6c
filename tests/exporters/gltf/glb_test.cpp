#include "exporters/gltf/glb.hpp"

#include <catch2/catch.hpp>
#include <cstring>
#include <set>

#include "exporters/gltf/gltf_exporter.hpp"
#include "exporters/json/numbers.hpp"
#include "kernel/plugin/memory.hpp"
#include "tests/exporters/scene/suite.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::uint32_t word(const std::string& bytes, std::size_t at) {
  std::uint32_t out = 0;
  for (std::size_t i = 0; i < 4; ++i)
    out |= std::uint32_t(static_cast<unsigned char>(bytes.at(at + i))) << 8 * i;
  return out;
}

struct Parts {
  Json json;
  std::string text, binary;
};

// Header, JSON chunk, and a BIN chunk where there is one (section 4.4 of the specification).
Parts opened(const std::string& bytes) {
  REQUIRE(bytes.substr(0, 4) == "glTF");
  REQUIRE(word(bytes, 4) == 2);
  REQUIRE(word(bytes, 8) == bytes.size());
  const std::size_t size = word(bytes, 12);
  REQUIRE(bytes.substr(16, 4) == "JSON");
  REQUIRE(size % 4 == 0);
  Parts out{Json::parse(bytes.substr(20, size)), bytes.substr(20, size), {}};
  const std::size_t next = 20 + size;
  if (next == bytes.size()) return out;
  REQUIRE(bytes.substr(next + 4, 4) == std::string("BIN\0", 4));
  out.binary = bytes.substr(next + 8);
  REQUIRE(out.binary.size() == word(bytes, next));
  REQUIRE(out.binary.size() % 4 == 0);
  return out;
}

// A triangle as a shape of that many points.
scene::Scene with_points(std::size_t count) {
  Mesh mesh;
  for (std::size_t i = 0; i < count; ++i) mesh.points.push_back({double(i), double(i % 2), 0});
  mesh.normals.assign(count, {0, 0, 1});
  mesh.triangles = {{0, 2, std::uint32_t(count - 1)}};
  return {{{"sheet", "", mesh}}, {{"sheet-01", 0, {}, scene::Kind::cover, {0, 0, 0}}}};
}

int index_type(std::size_t points) {
  const Json json = opened(glb(with_points(points), "t")).json;
  return json["accessors"][json["meshes"][0]["primitives"][0]["indices"].get<std::size_t>()]["componentType"];
}

}  // namespace

TEST_CASE("The same scene gives the same bytes") {
  const Shown& press = shown_press("two moulds");
  CHECK(glb(press.scene, "press") == glb(scene::scene_of(press.plan), "press"));
}

TEST_CASE("A title and names may hold anything that is UTF-8, and what is not does no harm") {
  scene::Scene scene = with_points(4);
  scene.shapes[0].name = "\"ä\\板\n\x01";
  const Json json = opened(glb(scene, "</script>\"Ständer\" 椅")).json;
  CHECK(json["scenes"][0]["name"] == "</script>\"Ständer\" 椅");
  CHECK(json["meshes"][0]["name"] == "\"ä\\板\n\x01");
  CHECK(opened(glb(scene, "a\xff")).json["scenes"][0]["name"] == "a\xEF\xBF\xBD");
}

TEST_CASE("A scene without pieces is still a file") {
  const Parts parts = opened(glb({}, "nothing"));
  CHECK(parts.binary.empty());
  CHECK(parts.json["nodes"].size() == 1);
  for (const char* list : {"meshes", "materials", "buffers", "bufferViews", "accessors", "animations"})
    CHECK_FALSE(parts.json.contains(list));
}

TEST_CASE("Indices are short as long as the greatest leaves the format's own mark free") {
  CHECK(index_type(65535) == 5123);
  CHECK(index_type(65536) == 5125);
}

TEST_CASE("The tree is press, kinds, pieces; what moves has a channel, what stands still a matrix") {
  int seen = 0;
  for (const Shown& press : shown_presses()) {
    INFO(press.name);
    const Json json = opened(glb(press.scene, press.name)).json;
    CHECK(json["asset"]["version"] == "2.0");
    const Json& root = json["nodes"][json["scenes"][0]["nodes"][0].get<std::size_t>()];
    CHECK(root["name"] == "press");
    CHECK(root["matrix"][0] == 0.001);
    std::set<std::size_t> moved;
    for (const Json& channel : json["animations"][0]["channels"]) {
      CHECK(channel["target"]["path"] == "translation");
      moved.insert(channel["target"]["node"].get<std::size_t>());
    }
    std::size_t pieces = 0;
    for (const Json& kind : root["children"])
      for (const Json& child : json["nodes"][kind.get<std::size_t>()]["children"]) {
        const auto index = child.get<std::size_t>();
        const Json& node = json["nodes"][index];
        const scene::Piece& one = piece(press.scene, node["name"]);
        CHECK(json["nodes"][kind.get<std::size_t>()]["name"] == scene::title(one.kind));
        CHECK(node["extras"]["part"] == press.scene.shapes[one.shape].name);
        CHECK(node["extras"]["stock"] == press.scene.shapes[one.shape].stock);
        CHECK((moved.count(index) == 1) == (one.opens.norm() > 0));
        CHECK(node.contains("matrix") == (moved.count(index) == 0));
        CHECK(node.contains("rotation") == (moved.count(index) == 1));
        ++pieces;
      }
    CHECK(pieces == press.scene.pieces.size());
    seen += int(pieces);
  }
  CHECK(seen > 500);
}

TEST_CASE("Pieces of one shape share its numbers, whatever their kind") {
  scene::Scene scene = with_points(4);
  scene.pieces.push_back({"sheet-02", 0, {}, scene::Kind::cover, {0, 0, 0}});
  scene.pieces.push_back({"sheet-03", 0, {}, scene::Kind::panel, {0, 9, 0}});
  const Json json = opened(glb(scene, "t")).json;
  CHECK(json["meshes"].size() == 2);     // a mesh carries its colour
  CHECK(json["accessors"].size() == 5);  // points, normals, faces; times and the way of the third
  CHECK(json["meshes"][0]["primitives"][0]["attributes"] == json["meshes"][1]["primitives"][0]["attributes"]);
}

TEST_CASE("The way of a piece begins where it lies shut and ends where it lies open") {
  scene::Scene scene = with_points(4);
  scene.pieces[0].placed = {{10, 20, 30}, {0, 1, 0}, {-1, 0, 0}};
  scene.pieces[0].opens = {0, 5, 0};
  const Parts parts = opened(glb(scene, "t"));
  const Json& node = parts.json["nodes"][1];
  CHECK(node["translation"] == Json::array({10, 20, 30}));
  // A quarter turn about Z: (0, 0, sin 45, cos 45).
  CHECK(node["rotation"][2].get<double>() == within(0.707106781, 1e-9));
  CHECK(node["rotation"][3].get<double>() == within(0.707106781, 1e-9));
  const Json& way =
      parts.json["accessors"][parts.json["animations"][0]["samplers"][0]["output"].get<std::size_t>()];
  const std::size_t at = parts.json["bufferViews"][way["bufferView"].get<std::size_t>()]["byteOffset"];
  float stored[6];
  std::memcpy(stored, parts.binary.data() + at, sizeof stored);
  CHECK(std::vector<float>(stored, stored + 6) == std::vector<float>{10, 20, 30, 10, 25, 30});
}

TEST_CASE("The exporter writes one file with the press in it") {
  const Evaluation result = evaluated(job_text(kBowed, birch(7), kWorked));
  REQUIRE(result.plan);
  Progress quiet;
  MemorySink sink;
  GltfExporter().write({*result.job, *result.plan, result.findings, quiet}, sink);
  REQUIRE(sink.written() == std::vector<std::string>{"press.glb"});
  CHECK(sink.files().at("press.glb") == glb(scene::scene_of(*result.plan), result.plan->title));
}
