// The upper half of a press as it stands when the press is open: an outline of its other position, thin and
// long-dashed double-dotted (ISO 128-2 type 05), without fill.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Empty for a press that does not open.
Box2 open_box(const PressPlan& plan, double z);
void add_open_half(Drawing& drawing, const PressPlan& plan, double z, const View& view);

}  // namespace lamwright::drawing
