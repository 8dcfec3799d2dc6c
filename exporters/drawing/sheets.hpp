// The dimensioned sheets of a press, ready for any drawing format.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/sheet.hpp"
#include "kernel/plugin/exporter.hpp"

namespace lamwright::drawing {

struct NamedDrawing {
  std::string name;  // "press", "seating", "pressure", "springback", else the part's
  Drawing drawing;
};

// What every sheet of one press carries.
struct SheetSet {
  const PressPlan& plan;
  std::string paper;                  // smallest one to try, "a3"
  std::vector<std::string> warnings;  // failed findings, a line each
  int sheets = 1;
};

// Title block of one sheet of the set; the scale is still to be filled in.
TitleBlock title_block(const SheetSet& set, int sheet, std::string drawing, std::string detail);

Drawing press_sheet(const SheetSet& set, int sheet);
// Of a plan with `seated`: how the upper half presses.
Drawing seating_sheet(const SheetSet& set, int sheet);
// `part` indexes the plan's parts.
Drawing beam_sheet(const SheetSet& set, int sheet, std::size_t part);
Drawing former_sheet(const SheetSet& set, int sheet, std::size_t part);

// The press first, then how its upper half seats where it has one, the pressure where it is known, what
// release changes where it does, then every unique beam, bearer and former, in the plan's order.
std::vector<NamedDrawing> sheets(const ExportInput& input);

}  // namespace lamwright::drawing
