// Dimensions and names of the press in section.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Room round the view that the dimensions take, mm on paper.
struct Margins {
  double left = 0, right = 0, bottom = 0, top = 0;
};
Margins section_margins(const PressPlan& plan);

// `field` bounds the notes. add_section has drawn the view before.
void add_section_dimensions(Drawing& drawing, const PressPlan& plan, double z, const View& view,
                            const Box2& field);

}  // namespace lamwright::drawing
