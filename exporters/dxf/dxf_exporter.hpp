// Exporter "dxf": cutting files for a router.
#pragma once
#include "kernel/plugin/exporter.hpp"

namespace lamwright {

// Writes parts/<part>.dxf for every board part and shop aid and sheets/<n>.dxf for every nested sheet, in the
// version that the job's outputs name.
class DxfExporter : public Exporter {
 public:
  std::string name() const override { return "dxf"; }  // as `outputs.only` names it
  std::string summary() const override { return "cutting files for a router, a layer to an operation (DXF)"; }
  void write(const ExportInput& input, Sink& sink) const override;
};

}  // namespace lamwright
