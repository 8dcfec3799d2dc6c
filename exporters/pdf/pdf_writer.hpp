// Drawings as the pages of a PDF file.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright {

struct PdfInfo {
  std::string title;
  std::string date;  // ISO day "2024-03-01", the file's creation date; empty: 1970-01-01
};

struct PdfText {
  std::string bytes;
  std::vector<char32_t> missing;  // characters of its texts that are drawn as boxes, each once, ascending
};

// One page a drawing, of the drawing's own size in true mm, with a bookmark of its title. Pens are painted in
// their order. Texts are in the drawing font (lettering.hpp), in their pen's colour; the file carries it, no
// font of the machine is asked for. The bytes depend on the arguments alone: no clock, locale or time zone.
// Places on paper are kept to 0.0014 mm (1/256 of a point), arcs to 0.004 mm. Throws Error (internal) when
// the file cannot be made.
PdfText pdf_text(const std::vector<drawing::Drawing>& pages, const PdfInfo& info);
PdfText pdf_text(const std::vector<const drawing::Drawing*>& pages, const PdfInfo& info);  // none is null

}  // namespace lamwright
