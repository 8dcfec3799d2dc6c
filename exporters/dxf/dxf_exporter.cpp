#include "exporters/dxf/dxf_exporter.hpp"

#include "exporters/drawing/cutting_files.hpp"
#include "exporters/dxf/dxf_writer.hpp"

namespace lamwright {

void DxfExporter::write(const ExportInput& input, Sink& sink) const {
  input.progress.step("cutting files (DXF)");
  const DxfVersion version = dxf_version(input.job.outputs.dxf);
  drawing::CuttingFiles files(
      input, sink, {".dxf", [&](const drawing::Drawing& drawing) { return dxf_text(drawing, version); }});
  files.write_parts();
  files.write_sheets(input.supply.sheets);
  files.note_missing();
}

}  // namespace lamwright
