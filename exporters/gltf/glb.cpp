#include "exporters/gltf/glb.hpp"

#include <map>
#include <optional>
#include <string_view>
#include <utility>

#include "exporters/gltf/buffer.hpp"
#include "exporters/gltf/placing.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

using gltf::Buffer;
using gltf::Target;
using scene::Kind;
using scene::Piece;
using scene::Scene;

constexpr double kMetres = 0.001;
constexpr const char* kEdgeColour = "#26221d";
constexpr double kRoughness = 0.9;
constexpr std::size_t kRoot = 0;
enum Mode { kLines = 1, kTriangles = 4 };

bool moves(const Piece& piece) { return piece.opens.norm() > kSamePoint; }

template <std::size_t N>
std::vector<std::uint32_t> flat(const std::vector<std::array<std::uint32_t, N>>& groups) {
  std::vector<std::uint32_t> out;
  for (const auto& group : groups) out.insert(out.end(), group.begin(), group.end());
  return out;
}

// Accessors of a shape, which meshes of several kinds may share.
struct Stored {
  std::size_t points = 0, normals = 0, faces = 0;
  std::optional<std::size_t> edges;
};

class Document {
 public:
  Document(const Scene& scene, const std::string& title) : scene_(scene), title_(title) { add_nodes(); }

  std::string text() const;
  const std::string& bytes() const { return buffer_.bytes(); }

 private:
  void add_nodes();
  // The root is the first, and is written when its children are known.
  std::size_t add_node(const Json& node) { return nodes_.add(node) + 1; }
  std::size_t piece_node(const Piece& piece);
  std::size_t mesh_of(const Piece& piece);
  const Stored& stored(std::size_t shape);
  std::size_t material(const std::string& name, const std::string& colour);
  void animate(std::size_t node, const Piece& piece);

  const Scene& scene_;
  const std::string& title_;
  Buffer buffer_;
  gltf::JsonList nodes_, meshes_, materials_, samplers_, channels_;  // nodes below the root
  std::vector<std::size_t> kinds_;                                   // nodes right below the root
  std::map<std::size_t, Stored> stored_;
  std::map<std::pair<std::size_t, Kind>, std::size_t> mesh_index_;
  std::map<std::string, std::size_t> material_index_;
  std::optional<std::size_t> times_;
};

std::size_t Document::material(const std::string& name, const std::string& colour) {
  const auto [known, added] = material_index_.try_emplace(name, materials_.size());
  if (added)
    materials_.add({{"name", name},
                    {"pbrMetallicRoughness",
                     {{"baseColorFactor", gltf::linear_colour(colour)},
                      {"metallicFactor", 0},
                      {"roughnessFactor", kRoughness}}},
                    {"doubleSided", false}});
  return known->second;
}

const Stored& Document::stored(std::size_t shape) {
  const auto [known, added] = stored_.try_emplace(shape);
  if (!added) return known->second;
  const Mesh& mesh = scene_.shapes[shape].mesh;
  Stored& out = known->second;
  out.points = buffer_.add_points(mesh.points, Target::vertices);
  out.normals = buffer_.add_normals(mesh.normals);
  out.faces = buffer_.add_indices(flat(mesh.triangles));
  if (!mesh.edges.empty()) out.edges = buffer_.add_indices(flat(mesh.edges));
  return out;
}

// A mesh carries its material, so a shape that stands in two kinds makes two of the same numbers.
std::size_t Document::mesh_of(const Piece& piece) {
  const auto [known, added] = mesh_index_.try_emplace({piece.shape, piece.kind}, meshes_.size());
  if (!added) return known->second;
  const Stored& data = stored(piece.shape);
  Json primitives = Json::array();
  primitives.push_back({{"attributes", {{"POSITION", data.points}, {"NORMAL", data.normals}}},
                        {"indices", data.faces},
                        {"material", material(title(piece.kind), colour(piece.kind))},
                        {"mode", int(kTriangles)}});
  if (data.edges)
    primitives.push_back({{"attributes", {{"POSITION", data.points}}},
                          {"indices", *data.edges},
                          {"material", material("Edges", kEdgeColour)},
                          {"mode", int(kLines)}});
  meshes_.add({{"name", scene_.shapes[piece.shape].name}, {"primitives", std::move(primitives)}});
  return known->second;
}

void Document::animate(std::size_t node, const Piece& piece) {
  if (!times_) times_ = buffer_.add_times({0, 1});
  const std::size_t way =
      buffer_.add_points({piece.placed.origin, piece.placed.origin + piece.opens}, Target::none);
  channels_.add({{"sampler", samplers_.size()}, {"target", {{"node", node}, {"path", "translation"}}}});
  samplers_.add({{"input", *times_}, {"interpolation", "LINEAR"}, {"output", way}});
}

// What an animation moves must not have a matrix.
std::size_t Document::piece_node(const Piece& piece) {
  const scene::Shape& shape = scene_.shapes[piece.shape];
  Json node{{"name", piece.name}, {"mesh", mesh_of(piece)}};
  if (moves(piece)) {
    node["translation"] = json_point(piece.placed.origin);
    node["rotation"] = gltf::rotation(piece.placed);
  } else {
    node["matrix"] = gltf::matrix(piece.placed);
  }
  node["extras"] = {{"part", shape.name}, {"stock", shape.stock}};
  const std::size_t index = add_node(node);
  if (moves(piece)) animate(index, piece);
  return index;
}

void Document::add_nodes() {
  std::map<Kind, std::vector<std::size_t>> of_kind;
  for (const Piece& piece : scene_.pieces) of_kind[piece.kind].push_back(piece_node(piece));
  for (const auto& [kind, pieces] : of_kind)
    kinds_.push_back(
        add_node({{"name", title(kind)}, {"children", pieces}, {"extras", {{"title", title(kind)}}}}));
}

std::string Document::text() const {
  Json root{{"name", "press"},
            {"matrix", {kMetres, 0, 0, 0, 0, kMetres, 0, 0, 0, 0, kMetres, 0, 0, 0, 0, 1}}};
  if (!kinds_.empty()) root["children"] = kinds_;
  std::string nodes = "[" + gltf::json_line(root);
  if (!nodes_.empty()) nodes += "," + nodes_.entries();
  gltf::JsonObject out;
  out.add("asset", gltf::json_line({{"version", "2.0"}, {"generator", "lamwright"}}));
  out.add("scene", "0");
  out.add("scenes", gltf::json_line(Json::array({{{"name", title_}, {"nodes", Json::array({kRoot})}}})));
  out.add("nodes", nodes + "]");
  out.add("materials", materials_);
  out.add("meshes", meshes_);
  if (!channels_.empty())
    out.add("animations", R"([{"name":"opening","channels":)" + channels_.text() + R"(,"samplers":)" +
                              samplers_.text() + "}]");
  out.add("accessors", buffer_.accessors());
  out.add("bufferViews", buffer_.views());
  if (!bytes().empty()) out.add("buffers", gltf::json_line(Json::array({{{"byteLength", bytes().size()}}})));
  return out.text();
}

// `type`: four bytes.
std::string chunk(std::string_view type, std::string data, char filler) {
  data.resize((data.size() + 3) / 4 * 4, filler);
  return gltf::little_endian(std::uint32_t(data.size())) + std::string(type) + data;
}

}  // namespace

std::string glb(const scene::Scene& scene, const std::string& title) {
  constexpr std::uint32_t kVersion = 2, kHeader = 12;
  const Document document(scene, title);
  std::string chunks = chunk("JSON", document.text(), ' ');
  if (!document.bytes().empty()) chunks += chunk({"BIN\0", 4}, document.bytes(), '\0');
  return "glTF" + gltf::little_endian(kVersion) +
         gltf::little_endian(kHeader + std::uint32_t(chunks.size())) + chunks;
}

}  // namespace lamwright
