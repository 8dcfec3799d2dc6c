// Names and notes of a press of two moulds in section.
#pragma once
#include "exporters/drawing/section_sheet.hpp"

namespace lamwright::drawing {

// After the dimensions: each note looks for a free place. Beside those of any press: contact radii of both
// edges, each once, strap loops, stops, base line.
void add_mould_notes(const SectionSheet& sheet);

}  // namespace lamwright::drawing
