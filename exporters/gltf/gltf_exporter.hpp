// The press as a 3D file for viewers.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// press.glb: binary glTF 2.0, shut to open as an animation.
class GltfExporter : public Exporter {
 public:
  std::string name() const override { return "gltf"; }
  std::string summary() const override {
    return "the press to look at from all sides, shut and open (glTF 2.0)";
  }
  ExportNeeds needs() const override { return {.supply = false}; }  // made from bodies alone
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
