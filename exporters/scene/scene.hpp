// The press as it is looked at: meshes of its pieces, where they lie, and where they go when it opens.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "kernel/part/mesh.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::scene {

// What is shown and hidden together, from the bottom up.
enum class Kind {
  beam,           // beams and bearers
  former,         // lower and upper
  block,          // spacer blocks, fixing blocks, stops
  bed_caul,       // slats or sheets under the pack
  cover,          // cover sheets, liners, sheathing
  panel,          // the blank
  top_caul,       // over the pack
  pressing_beam,  // over flats
  pin,
  strap  // with a block where each ratchet sits
};
inline constexpr std::size_t kKinds = 10;
std::string title(Kind kind);   // for people: "Beams", "Formers", "Bed caul" ...
std::string colour(Kind kind);  // "#rrggbb"; lightness differs, so that greys tell kinds apart

// One unique piece. Equal pieces share it.
struct Shape {
  std::string name;   // a part's name, or "strap", "cover-lower" ...
  std::string stock;  // "D40 46 x 90", or empty
  Mesh mesh;
};

struct Piece {
  std::string name;  // a body's name, "former-lower-03", or "strap-03"
  std::size_t shape = 0;
  Frame placed;  // from the shape's own frame to the press, shut
  Kind kind = Kind::former;
  Vec3 opens{0, 0, 0};  // by how much it has moved with the press open, press frame
};

struct Scene {
  std::vector<Shape> shapes;
  std::vector<Piece> pieces;  // by kind, then by name
};

// Everything that stands in the press: bodies of the plan, sheets that are laid in without being bodies,
// straps, ratchets and pins.
Scene scene_of(const PressPlan& plan);
// One part of the plan alone, in its own frame.
Scene scene_of(const Part& part);

}  // namespace lamwright::scene
