// A block or a straight piece in two or three views of first angle projection: from the front, at its right
// from the left, and above it from below where bores are seen end on there.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/section_dimensions.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/part/part.hpp"

namespace lamwright::drawing {

// The front view and, added to its upper right corner, the sizes of the other views; the room round it holds
// the dimensions and the gaps between views, which do not shrink with the scale.
Box2 block_box(const Part& part);
Margins block_margins(const Part& part);

// Its edge of lines and arcs; empty for a box.
std::vector<Segment> shaped_edge(const Part& part);

// Views, sizes over all, of a groove, of the shaped edge and of bores. `front` is the front view; `room`
// bounds the notes.
void add_block(Drawing& drawing, const Part& part, const View& front, const Box2& room);

}  // namespace lamwright::drawing
