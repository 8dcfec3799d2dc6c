#include "exporters/svg/svg_exporter.hpp"

#include "exporters/drawing/cutting_files.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/svg/svg_writer.hpp"

namespace lamwright {

void SvgExporter::write(const ExportInput& input, Sink& sink) const {
  input.progress.step("cutting files (SVG)");
  drawing::CuttingFiles files(input, sink, {".svg", svg_text});
  files.write_parts();
  files.write_sheets(input.supply.sheets);
  files.note_missing();
  input.progress.step("drawings (SVG)");
  for (const auto& sheet : drawing::sheets(input))
    sink.write("drawings/" + sheet->name + ".svg", svg_text(sheet->drawing));
}

}  // namespace lamwright
