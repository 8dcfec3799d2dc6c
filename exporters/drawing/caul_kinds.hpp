// Runs of a slatted caul that are made alike: the letters that stand beside them on its map.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/table.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

struct RunKind {
  std::string letter;  // A, B ... Z, AA ...; without I and O, which read as figures
  std::string
      pieces;  // from the near edge to the far edge: "900 + 772 of 900", "3 x 600", "900, not in stock"
  std::string width;      // "45", "45 ripped to 29.7"
  bool screwed = false;   // to the formers; else only tied to its neighbours
  std::vector<int> runs;  // numbers from 1 at the left end of the curve, ascending
};

// In the order in which they are laid.
std::vector<RunKind> run_kinds(const PlannedCaul& caul);
// Of each run.
std::vector<std::string> run_letters(const PlannedCaul& caul);

// Runs that are screwed to the formers, or those that are not; numbers from 1, ascending.
std::vector<int> runs_screwed(const PlannedCaul& caul, bool screwed);

// Ascending numbers as people list them: "1, 3-5, 8, 10 to 20 (every second)".
std::string number_list(const std::vector<int>& numbers);

// A row each, as wide as its texts need to be 2.5 high; of runs too scattered for a row only the first and
// the last are told.
Table kind_table(const std::vector<RunKind>& kinds);

}  // namespace lamwright::drawing
