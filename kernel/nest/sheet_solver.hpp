// Fewest sheets for rectangles by guillotine cuts.
#pragma once
#include <vector>

#include "kernel/nest/guillotine_table.hpp"
#include "kernel/nest/sheet_filling.hpp"

namespace lamwright {

struct SheetTask {
  Field empty;
  std::vector<Rectangle> items;  // each fits the empty sheet
  std::vector<int> counts;
  Whole kerf = 0;
};

struct SheetCutting {
  std::vector<SawnSheet> sheets;  // fullest first
  int least = 0;                  // no cutting needs fewer
  Field rest;                     // the greatest free field of the last sheet
};

SheetCutting fewest_sheets(const SheetTask& task);

}  // namespace lamwright
