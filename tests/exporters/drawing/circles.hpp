// Circles on a drawing, by pen and radius.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::test {

inline std::size_t circles(const drawing::Drawing& sheet, const std::string& pen, double radius) {
  std::size_t count = 0;
  for (const drawing::Item& item : sheet.items())
    if (const auto* circle = std::get_if<drawing::Circle>(&item.shape))
      count += sheet.pens()[item.pen].name == pen && circle->radius == radius;
  return count;
}

}  // namespace lamwright::test
