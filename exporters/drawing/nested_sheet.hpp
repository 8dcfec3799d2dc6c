// A sheet of board with the parts that are cut from it.
#pragma once
#include "exporters/drawing/cutting.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::drawing {

// The board's lower left corner is the origin and marked as zero point; its border, which is not cut, is on
// SHEET_BORDER. All parts share the layers of operations(); their names are on LABEL, inside them. The bars
// of CHECK_100 lie on free board, else beside its right edge: then the drawing is wider than the board.
// Throws Error (geometry) when two lines to be cut lie on one another.
CuttingDrawing nested_sheet_drawing(const CutSheet& sheet, const std::string& title,
                                    const CuttingOptions& options = {});

}  // namespace lamwright::drawing
