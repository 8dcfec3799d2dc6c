// The pull line and the chord of a press of two moulds.
#pragma once
#include "exporters/drawing/section_sheet.hpp"

namespace lamwright::drawing {

// Through its point, between two heights on paper; where it is the centre line X = 0 that one stands for it.
void add_pull_line(const SectionSheet& sheet, double bottom, double top);
// After the dimensions.
void add_pull_note(const SectionSheet& sheet, double top);
// "pull line, axis 12° from the chord's normal"
std::string pull_text(const Pull& pull);

// Between the ends of the neutral line; before the dimensions. Its length, on it or beside it, comes after
// them.
void add_chord(const SectionSheet& sheet);
void add_chord_size(const SectionSheet& sheet);

// Locating pins, one behind the other, through the pack and what lies on it.
void add_pins(const SectionSheet& sheet);
void add_pin_note(const SectionSheet& sheet);

}  // namespace lamwright::drawing
