// The dimensioned sheets of a press, ready for any drawing format.
#pragma once
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/sheet.hpp"
#include "kernel/plugin/exporter.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::drawing {

struct NamedDrawing {
  std::string name;  // "press", "stations", "seating", "pressure", "springback", "blanks", else the part's
  Drawing drawing;
};
using SharedDrawings = std::vector<std::shared_ptr<const NamedDrawing>>;  // none is null

// What every sheet of one press carries.
struct SheetSet {
  const PressPlan& plan;
  std::string paper;                  // smallest one to try, "a3"
  std::vector<std::string> warnings;  // failed findings, a line each
  int sheets = 1;
  std::vector<PackSheet> pack{};  // as the lists have it
};

// Title block of one sheet of the set; the scale is still to be filled in.
TitleBlock title_block(const SheetSet& set, int sheet, std::string drawing, std::string detail);

Drawing press_sheet(const SheetSet& set, int sheet);
// Of a plan with `seated`: how the upper half presses.
Drawing seating_sheet(const SheetSet& set, int sheet);
// `part` indexes the plan's parts.
Drawing beam_sheet(const SheetSet& set, int sheet, std::size_t part);
Drawing former_sheet(const SheetSet& set, int sheet, std::size_t part);
// Whether the figures of its contact edge would crowd a former's sheet, so that they have one of their own.
bool contact_edge_apart(const SheetSet& set, std::size_t part);
Drawing contact_edge_sheet(const SheetSet& set, int sheet, std::size_t part);
// Of a block, a pressing beam, a stop or a grooved bearer.
Drawing block_sheet(const SheetSet& set, int sheet, std::size_t part);
// The press from above: where its formers stand along the width.
Drawing stations_sheet(const SheetSet& set, int sheet);
// The sheets to cut: plies for all panels; cover sheets, sheathing, liners and continuous cauls for one pack.
Drawing blanks_sheet(const SheetSet& set, int sheet);
// `caul` indexes the plan's cauls: its slats laid out flat.
Drawing caul_sheet(const SheetSet& set, int sheet, std::size_t caul);
// `aid` indexes the plan's aids.
Drawing aid_sheet(const SheetSet& set, int sheet, std::size_t aid);

// The press first and where its formers stand, then how its upper half seats where it has one, the pressure
// where it is known, what release changes where it does; then every unique piece in the plan's order (slats
// and the panel apart), the blanks, and what is cut with the press but is no piece of it. Exporters of one
// build share them.
SharedDrawings sheets(const ExportInput& input);
// Only those whose name is wanted, numbered as in the whole set.
SharedDrawings sheets(const ExportInput& input, const std::function<bool(const std::string&)>& wanted);

}  // namespace lamwright::drawing
