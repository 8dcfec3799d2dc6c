// Names and notes of the press in section.
#pragma once
#include "exporters/drawing/section_sheet.hpp"

namespace lamwright::drawing {

// After the dimensions: each note looks for a free place.
void add_section_notes(const SectionSheet& sheet);

// What presses of one and of two moulds have in common: names of the cut pieces, one of each kind of block,
// the pack with its cauls and sheets.
void add_body_names(const SectionSheet& sheet);
void add_block_names(const SectionSheet& sheet);
void add_layer_notes(const SectionSheet& sheet);

}  // namespace lamwright::drawing
