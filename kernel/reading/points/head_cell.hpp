// One cell of a table's head.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "shared/quantity.hpp"

namespace lamwright {

struct HeadCell {
  std::string name;  // in small letters, without the unit
  std::optional<LengthUnit> unit;
};

// "x [mm]", "X (in)", "offset mm", "y_mm", "Y in mm", "mm". Throws Error (job) without a place for brackets
// that hold no unit.
HeadCell head_cell(std::string_view text);

// "mm", "[mm]", "(mm)"
std::optional<LengthUnit> lone_unit(std::string_view text);

// Blanks part a name from its unit as they part the cells: puts units behind the names before them.
std::vector<std::string> with_units_joined(const std::vector<std::string>& cells);

std::string name_of(LengthUnit unit);

}  // namespace lamwright
