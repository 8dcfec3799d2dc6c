// A table read with one separator.
#pragma once
#include <string>
#include <vector>

#include "kernel/reading/points/cells.hpp"
#include "kernel/reading/points/points.hpp"

namespace lamwright {

struct PointsReading {
  Separator separator;
  MeasuredPoints measured;
  std::string means;  // "semicolons between cells, decimal comma"
};

// At least one line. Throws Error (job) with file and line where the table is not one with this separator.
PointsReading read_with(Separator separator, const std::vector<TableLine>& lines, const PointsSpec& spec);

}  // namespace lamwright
