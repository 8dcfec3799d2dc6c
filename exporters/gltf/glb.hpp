// A scene as binary glTF 2.0 (Khronos glTF 2.0 specification, chapter "GLB File Format Specification").
#pragma once
#include <string>

#include "exporters/scene/scene.hpp"

namespace lamwright {

// One file with everything in it. Units are metres and Y points up, as the format asks: the root node "press"
// scales from mm. Under it a node for each kind of piece, named by its title (also as `extras`
// {"title"}, for names are changed by some readers), under that the pieces with
// `extras` {"part", "stock"}; meshes are shared between equal pieces. Faces are triangles with normals, sharp
// edges a second primitive of lines. One animation "opening", 0 to 1 s: shut to open. Same scene, same bytes.
std::string glb(const scene::Scene& scene, const std::string& title);

}  // namespace lamwright
