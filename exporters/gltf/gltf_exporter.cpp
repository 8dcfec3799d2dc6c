#include "exporters/gltf/gltf_exporter.hpp"

#include "exporters/gltf/glb.hpp"

namespace lamwright {

void GltfExporter::write(const ExportInput& input, Sink& sink) const {
  sink.write("press.glb", glb(scene::scene_of(input.plan), input.plan.title));
}

}  // namespace lamwright
