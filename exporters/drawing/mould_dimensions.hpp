// Dimensions of a press of two moulds in section.
#pragma once
#include "exporters/drawing/section_sheet.hpp"

namespace lamwright::drawing {

// With its centre and pull lines, chord, pins and notes.
void add_mould_dimensions(const SectionSheet& sheet);

}  // namespace lamwright::drawing
