// Which columns hold X and Y.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/reading/points/cells.hpp"
#include "kernel/reading/points/points.hpp"

namespace lamwright {

struct Columns {
  std::size_t x = 0, y = 1;                                     // indices of the cells
  LengthUnit x_unit = LengthUnit::mm, y_unit = LengthUnit::mm;  // of bare numbers
  std::size_t count = 0;                                        // cells that a row has
  int counted_on = 0;                                           // line that has them
  bool head = false;                                            // the columns have names
  std::size_t first_row = 0;                                    // index of the first line that holds a point
  std::vector<std::string> notes;
};

// Reads the head, if there is one: a first line of names with or without units ("x [mm]; y [mm]",
// "station, offset"), a line of units below it. At least one line. Throws Error (job) with file and line for
// fewer than two columns, an unknown unit in brackets, several columns with names other than X and Y, and a
// unit for one of the two only.
Columns read_columns(const std::vector<TableLine>& lines, Separator separator, const PointsSpec& spec);

// How many cells there are without the empty ones at the end.
std::size_t filled(const std::vector<std::string>& cells);

}  // namespace lamwright
