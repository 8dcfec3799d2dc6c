// The numbered colours of DXF layers.
#pragma once
#include <string>

namespace lamwright::dxf {

// Number of the colour nearest to "#rrggbb", 1 to 255. Black is 7, which readers draw in black on white and
// in white on black.
int colour_number(const std::string& colour);

}  // namespace lamwright::dxf
