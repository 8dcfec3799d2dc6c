// Measured points from a table.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kernel/profile/vector.hpp"
#include "shared/quantity.hpp"

namespace lamwright {

struct PointsSpec {
  std::string file;                   // name for messages
  LengthUnit units = LengthUnit::mm;  // of bare numbers, unless the head of a column names its own
};

struct MeasuredPoints {
  std::vector<Vec2> points;        // mm, in the order of the table
  std::vector<int> lines;          // line of the file on which each stands
  std::vector<std::string> notes;  // the first: separator, decimal sign and units as taken
};

// Two columns, X and Y, separated by comma, semicolon, tab or blanks; decimal point or comma; fractions and
// units in cells as lengths are written elsewhere ("1 1/2 in"), quotes as in CSV. A head may name the columns
// (x and y, station and offset), also among others and the other way round, and their units ("x [mm]");
// further columns are left out and told. Lines that are empty or begin with # are skipped. What the separator
// and the decimal sign are is found from the whole table and said.
// Where the table holds in two ways it asks, with both and the way out: "1,2,3,4" as two or four cells,
// "1,2 1/2", a first column that may number the points, "1.050" among whole numbers below 1000, a unit for
// one column only. "1,234;5,678" is no such case. Throws Error (job) with file and line: a row with too few
// or too many cells, a cell that is no length, separators of thousands, mixed separators and decimal signs, a
// text that is not UTF-8; with the file: fewer than two points; limits: 64 MB, 1e6 points, 100 columns, 1e10
// mm.
MeasuredPoints read_points(std::string_view text, const PointsSpec& spec);

}  // namespace lamwright
