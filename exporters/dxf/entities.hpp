// What is drawn, as DXF entities.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/dxf/groups.hpp"

namespace lamwright::dxf {

void write_entity(Groups& groups, const std::string& layer, const drawing::Shape& shape);

}  // namespace lamwright::dxf
