// Lines that lie on one another: a router would cut them twice.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

struct Doubled {
  std::string layer;
  Segment first;
  Segment second;
};

// Pairs of one layer that coincide within 0.01 mm for more than 0.1 mm, in whole or in part: lines on one
// line, arcs on one circle, and any two strokes of which one lies along the other from end to end. Texts do
// not count. Of one layer only where one is named.
std::vector<Doubled> doubled_lines(const Drawing& drawing, std::string_view layer = {});

}  // namespace lamwright::drawing
