// The lower half of a press from above, along its width: Z to the right from the pack's near edge, X upward.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/section_dimensions.hpp"
#include "exporters/drawing/table.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Model is (Z, X).
Box2 stations_box(const PressPlan& plan);
Margins stations_margins(const PressPlan& plan);
void add_stations_view(Drawing& drawing, const PressPlan& plan, const View& view);

// no., Z of the mid-plane, former, what it stands on, strap.
Table station_table(const PressPlan& plan);
// Rows of blocks between and beside formers: part with its half, X and Y of the row in the press when it is
// shut, pieces. Without rows none.
Table block_rows_table(const PressPlan& plan);

}  // namespace lamwright::drawing
