#include "exporters/gltf/shared_glb.hpp"

#include "exporters/gltf/glb.hpp"

namespace lamwright {

std::shared_ptr<const scene::Scene> shared_scene(const ExportInput& input) {
  return made_once(input.shared, "scene", [&] { return scene::scene_of(input.plan); });
}

std::shared_ptr<const std::string> shared_glb(const ExportInput& input) {
  return made_once(input.shared, "glb", [&] { return glb(*shared_scene(input), input.plan.title); });
}

}  // namespace lamwright
