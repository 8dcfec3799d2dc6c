#include "exporters/svg/svg_exporter.hpp"

#include "exporters/drawing/cutting.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/svg/svg_writer.hpp"

namespace lamwright {

void SvgExporter::write(const ExportInput& input, Sink& sink) const {
  input.progress.step("cutting files (SVG)");
  for (const Part& part : input.plan.parts)
    if (part.board()) sink.write("parts/" + part.name() + ".svg", svg_text(drawing::cutting_drawing(part)));
  input.progress.step("drawings (SVG)");
  for (const drawing::NamedDrawing& sheet : drawing::sheets(input))
    sink.write("drawings/" + sheet.name + ".svg", svg_text(sheet.drawing));
}

}  // namespace lamwright
