// A drawing as SVG 1.1.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"

namespace lamwright {

// Width, height and viewBox in mm; a group with an id for each pen that is used; arcs as arcs (one beyond 179
// degrees as two, since its centre would hang on the last digit), circles as circles. Numbers to 1e-6.
std::string svg_text(const drawing::Drawing& drawing);

}  // namespace lamwright
