#include "exporters/gltf/gltf_exporter.hpp"

#include "exporters/gltf/shared_glb.hpp"

namespace lamwright {

void GltfExporter::write(const ExportInput& input, Sink& sink) const {
  sink.write("press.glb", *shared_glb(input));
}

}  // namespace lamwright
