// Model space, paper space and the objects that R2000 asks for beside what is drawn.
#pragma once
#include "exporters/dxf/groups.hpp"

namespace lamwright::dxf {

void write_blocks(Groups& groups);                      // the BLOCKS section; empty in R12
void write_objects(Groups& groups, const Box2& shown);  // the OBJECTS section, R2000 only

}  // namespace lamwright::dxf
