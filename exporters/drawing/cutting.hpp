// Cutting files: one flat part at true size for a router or laser, a layer to an operation.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "kernel/part/part.hpp"

namespace lamwright::drawing {

// The sheet is exactly the box of the outline, its lower left at the origin; the part lies with its far face
// up. Layers: OUTLINE; DRILL_<diameter> for bores through the board, with _DEEP_<depth> where they end in it;
// CBORE_<diameter>_DEEP_<depth>; _UNDERSIDE added where the tool enters from below; TRIM_LINE and, for
// other lines and texts that are drawn, not cut, MARK; CHECK_100 with two bars of exactly 100 for proving a
// print's size, where they fit clear of bores. Bores into an edge are not drawn: no router reaches them.
Drawing cutting_drawing(const Part& part);

}  // namespace lamwright::drawing
