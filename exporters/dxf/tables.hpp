// The tables of a DXF file: layers, linetypes and what every reader expects beside them.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/dxf/groups.hpp"

namespace lamwright::dxf {

// The TABLES section. layers[i] is the layer of the drawing's pen i, empty for a pen that nothing is drawn
// with. `shown` is what a viewer opens on.
void write_tables(Groups& groups, const drawing::Drawing& drawing, const std::vector<std::string>& layers,
                  const Box2& shown);

}  // namespace lamwright::dxf
