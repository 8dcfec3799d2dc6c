// The sheet that lays the panel as released on the panel as pressed.
#pragma once
#include "exporters/drawing/laid_over.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table.hpp"

namespace lamwright::drawing {

// Whether release changes the shape at all.
bool springs_back(const Panel& panel);

// Precondition: springs_back. `kind` tells where the share comes from.
Drawing springback_sheet(const SheetSet& set, int sheet, SpringbackSpec::Kind kind);

// Runs of the described face: radius and turn, or length, as released and as pressed.
Table released_runs_table(const LaidOver& lines);
// Chord, rise and turn of both; and how far the ends lie apart.
Table shape_table(const LaidOver& lines);
Table apart_table(const LaidOver& lines);

}  // namespace lamwright::drawing
