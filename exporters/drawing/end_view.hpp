// The press cut along its width: stations of the formers, spacer blocks, pack.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/section_dimensions.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

// Section at X = 0 seen along X (so Z runs to the right, as a view from the left does); model is (Z, Y).
Box2 end_box(const PressPlan& plan);
// Wide enough for the view's name and its own sizes.
Margins end_margins(const PressPlan& plan, const Scale& scale, bool reduced);
// `scale` is written beside the view's name when it is not the sheet's.
void add_end_view(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& field,
                  const std::string& scale = {});

}  // namespace lamwright::drawing
