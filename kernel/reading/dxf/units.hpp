// The unit of a drawing.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/reading/dxf/record.hpp"
#include "shared/quantity.hpp"

namespace lamwright::dxf_reading {

// What the header says of units, with the lines on which it does; nothing where it is silent.
struct HeaderUnits {
  std::optional<int> insunits;     // $INSUNITS
  std::optional<int> measurement;  // $MEASUREMENT: 0 inches, 1 metric
  int line = 0;                    // of $INSUNITS
};

HeaderUnits header_units(const Record& header);

struct DrawingUnit {
  double mm = 1;
  std::string note;  // which unit was taken, on whose word, and who is not followed
};

// $INSUNITS comes first, then the unit given; $MEASUREMENT alone is no unit. Throws Error (job) when neither
// names one, and for a number that stands for no unit or one of astronomy.
DrawingUnit drawing_unit(const HeaderUnits& header, std::optional<LengthUnit> given, const std::string& file);

}  // namespace lamwright::dxf_reading
