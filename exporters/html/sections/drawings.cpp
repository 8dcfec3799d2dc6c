#include "exporters/drawing/sheets.hpp"
#include "exporters/html/image.hpp"
#include "exporters/html/sections/section.hpp"
#include "kernel/job/wanted.hpp"

namespace lamwright::html {

namespace {

Markup where_all_are(const OutputSpec& outputs) {
  Markup text("Shown reduced: do not measure from them. Lengths are in mm.");
  if (wanted(outputs, "pdf")) text += " All drawings lie in drawings.pdf.";
  if (wanted(outputs, "svg")) text += " Each lies in the folder drawings.";
  return element("p", text);
}

// What one needs at the bench: how the press stands, and which slat lies where.
bool at_the_bench(const std::string& name) {
  return name == "press" || name == "stations" || name == "bed-caul" || name == "top-caul";
}

}  // namespace

Section drawings_section(const PageInput& page) {
  Markup body = where_all_are(page.input.job.outputs);
  for (const auto& sheet : drawing::sheets(page.input, at_the_bench))
    body += image(sheet->drawing, words("Drawing: ", sheet->name), "drawing");
  return {"drawings", "Drawings", body};
}

}  // namespace lamwright::html
