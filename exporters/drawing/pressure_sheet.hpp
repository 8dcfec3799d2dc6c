// The sheet of the pressure map.
#pragma once
#include "exporters/drawing/pressure_map_view.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/table.hpp"

namespace lamwright::drawing {

Drawing pressure_sheet(const SheetSet& set, int sheet, const PressureMap& map, const Glue& glue);

// Least and greatest of the finished panel, mean of the blank, and what the glue wants.
Table map_table(const PressPlan& plan, const PressureMap& map, const Glue& glue);

}  // namespace lamwright::drawing
