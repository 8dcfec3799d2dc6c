#include "exporters/drawing/sheets.hpp"
#include "exporters/html/image.hpp"
#include "exporters/html/sections/section.hpp"

namespace lamwright::html {

Section drawings_section(const PageInput& page) {
  Markup body =
      element("p", "Every drawing lies in drawings.pdf and in the folder drawings; lengths there are in mm.");
  const auto shown = [](const std::string& name) { return name == "press" || name == "stations"; };
  for (const drawing::NamedDrawing& sheet : drawing::sheets(page.input, shown))
    body += image(sheet.drawing, words("Drawing of the press: ", sheet.name), "drawing");
  return {"drawings", "Drawings", body};
}

}  // namespace lamwright::html
