// The cells of a line.
#pragma once
#include <string>
#include <vector>

#include "kernel/reading/points/lines.hpp"

namespace lamwright {

// What stands between cells. Blanks come in two kinds, since "1 1/2  3 1/4" is two cells to its writer.
enum class Separator { comma, semicolon, tab, blanks, wide_blanks };

// "commas", "two or more blanks": as messages and notes call them.
std::string name_of(Separator separator);

// The separators that a table could have. A semicolon or a tab anywhere is one, since neither stands in a
// length; commas and blanks are tried. Throws Error (job) with file and line where some lines have the
// semicolon or tab and others have not; never empty.
std::vector<Separator> separators(const std::vector<TableLine>& lines, const std::string& file);

// A cell that begins with a quote ends with the next one, a doubled quote in it stands for one; elsewhere a
// quote is itself (1 1/2"). Blanks around a cell are no part of it. Throws Error (job) with file and line for
// quotes that do not end with the cell and for more than 100 cells.
std::vector<std::string> cells_of(const TableLine& line, Separator separator, const std::string& file);

}  // namespace lamwright
