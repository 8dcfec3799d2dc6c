// The press as a .glb file and as a scene, for every exporter of a build that shows it.
#pragma once
#include <memory>
#include <string>

#include "exporters/scene/scene.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// scene_of the plan; never null.
std::shared_ptr<const scene::Scene> shared_scene(const ExportInput& input);
// glb of that scene under the plan's title; never null.
std::shared_ptr<const std::string> shared_glb(const ExportInput& input);

}  // namespace lamwright
