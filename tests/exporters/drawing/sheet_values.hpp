// Sheets as plain values, each a copy.
#pragma once
#include <vector>

#include "exporters/drawing/sheets.hpp"

namespace lamwright::test {

inline std::vector<drawing::NamedDrawing> values(const drawing::SharedDrawings& shared) {
  std::vector<drawing::NamedDrawing> out;
  for (const auto& one : shared) out.push_back(*one);
  return out;
}

}  // namespace lamwright::test
