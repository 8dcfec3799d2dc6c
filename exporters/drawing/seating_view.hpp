// How the upper half of a press seats: the pressure along the curve, the pull line and how far it may stray.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/pressure_diagram.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Room round the diagram for the pull line, its stray and notes.
Margins seating_margins();
// The diagram with the pull line and its stray, on paper.
Box2 seating_box(const PressPlan& plan, const View& view);
// Precondition: the plan is seated. `field` bounds the notes.
void add_seating(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& field);

}  // namespace lamwright::drawing
